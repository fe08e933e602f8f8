package dxf

// objects holds the dictionaries that lead to everything without a place in a
// table: the root first, then groups, layouts, styles of multiple lines and plot
// styles.
const objects = `
0 SECTION
2 OBJECTS
0 DICTIONARY
5 20
330 0
100 AcDbDictionary
281 1
3 ACAD_GROUP
350 21
3 ACAD_LAYOUT
350 22
3 ACAD_MLINESTYLE
350 23
3 ACAD_PLOTSETTINGS
350 24
3 ACAD_PLOTSTYLENAME
350 25
0 DICTIONARY
5 21
330 20
100 AcDbDictionary
281 1
0 DICTIONARY
5 22
330 20
100 AcDbDictionary
281 1
3 Model
350 27
3 Layout1
350 28
0 DICTIONARY
5 23
330 20
100 AcDbDictionary
281 1
3 Standard
350 29
0 DICTIONARY
5 24
330 20
100 AcDbDictionary
281 1
0 ACDBDICTIONARYWDFLT
5 25
330 20
100 AcDbDictionary
281 1
3 Normal
350 26
100 AcDbDictionaryWithDefault
340 26
0 ACDBPLACEHOLDER
5 26
330 25
0 MLINESTYLE
5 29
330 23
100 AcDbMlineStyle
2 STANDARD
70 0
3
62 256
51 90.0
52 90.0
71 2
49 0.5
62 256
6 BYLAYER
49 -0.5
62 256
6 BYLAYER
` + modelLayout + paperLayout + `0 ENDSEC
`

const modelLayout = `0 LAYOUT
5 27
330 22
100 AcDbPlotSettings
1
2 none_device
4
6
` + margins + `70 1712
` + plotting + `100 AcDbLayout
1 Model
70 1
71 0
` + frame + `330 10
`

const paperLayout = `0 LAYOUT
5 28
330 22
100 AcDbPlotSettings
1
2 none_device
4
6
` + margins + `70 688
` + plotting + `100 AcDbLayout
1 Layout1
70 1
71 1
` + frame + `330 11
`

// margins is an A4 sheet without margins, plotted at true scale.
const margins = `40 0.0
41 0.0
42 0.0
43 0.0
44 210.0
45 297.0
46 0.0
47 0.0
48 0.0
49 0.0
140 0.0
141 0.0
142 1.0
143 1.0
`

// plotting says that lengths on paper are millimetres (72) and the scale is 1:1
// (75, 147).
const plotting = `72 1
73 0
74 5
7
75 16
147 1.0
148 0.0
149 0.0
`

// frame is the extent of a layout and its coordinate system, the usual one.
const frame = `10 0.0
20 0.0
11 210.0
21 297.0
12 0.0
22 0.0
32 0.0
14 0.0
24 0.0
34 0.0
15 210.0
25 297.0
35 0.0
146 0.0
13 0.0
23 0.0
33 0.0
16 1.0
26 0.0
36 0.0
17 0.0
27 1.0
37 0.0
76 0
`
