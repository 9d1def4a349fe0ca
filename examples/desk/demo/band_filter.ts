! Nine Tin Herons, spring rehearsals: the band filter of rack 1 on our own analyser. Invented, as the whole production.
[Version] 2.0
# MHz S DB R 50
[Number of Ports] 2
[Two-Port Data Order] 21_12
[Number of Frequencies] 5
[Reference] 50 50
[Matrix Format] Full
[Network Data]
! MHz    s11 dB  deg     s21 dB  deg     s12 dB  deg     s22 dB  deg
470.0     -9.8    64.0    -2.4   -71.0    -2.4   -71.0   -10.1    58.0
500.0    -17.5    21.0    -1.3  -118.0    -1.3  -118.0   -17.2    17.0
530.0    -22.0   -33.0    -1.1  -163.0    -1.1  -163.0   -21.4   -36.0
560.0    -19.6   -88.0    -1.2   152.0    -1.2   152.0   -19.9   -91.0
608.0    -10.4  -141.0    -2.1    83.0    -2.1    83.0   -10.8  -137.0
[End]
