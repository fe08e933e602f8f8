package dxf

// Every file holds the same objects around its entities. Their handles are
// fixed; those that the code needs have names. The first handle for the rest
// leaves room between them.
const (
	viewportTable handle = 0x1
	lineTypeTable handle = 0x2
	layerTable    handle = 0x3
	modelSpace    handle = 0x10
	viewport      handle = 0x16
	plotStyle     handle = 0x26
	firstFree     handle = 0x100
)

// classes declares the kinds of object that the file format itself does not know.
const classes = `
0 SECTION
2 CLASSES
0 CLASS
1 ACDBDICTIONARYWDFLT
2 AcDbDictionaryWithDefault
3 ObjectDBX Classes
90 0
280 0
281 0
0 CLASS
1 ACDBPLACEHOLDER
2 AcDbPlaceHolder
3 ObjectDBX Classes
90 0
280 0
281 0
0 CLASS
1 LAYOUT
2 AcDbLayout
3 ObjectDBX Classes
90 0
280 0
281 0
0 ENDSEC
`

// usualLineTypes starts the table of line types with the three that must exist.
const usualLineTypes = `
0 LTYPE
5 17
330 2
100 AcDbSymbolTableRecord
100 AcDbLinetypeTableRecord
2 BYBLOCK
70 0
3
72 65
73 0
40 0.0
0 LTYPE
5 18
330 2
100 AcDbSymbolTableRecord
100 AcDbLinetypeTableRecord
2 BYLAYER
70 0
3
72 65
73 0
40 0.0
0 LTYPE
5 19
330 2
100 AcDbSymbolTableRecord
100 AcDbLinetypeTableRecord
2 CONTINUOUS
70 0
3 solid line
72 65
73 0
40 0.0
`

// layerZero is the layer that must exist. Nothing is drawn on it.
const layerZero = `
0 LAYER
5 1A
330 3
100 AcDbSymbolTableRecord
100 AcDbLayerTableRecord
2 0
70 0
62 7
6 CONTINUOUS
370 -3
390 26
`

// laterTables holds the tables after the layers: text styles, views, coordinate
// systems, applications, dimension styles and blocks.
const laterTables = `
0 TABLE
2 STYLE
5 4
330 0
100 AcDbSymbolTable
70 2
0 STYLE
5 1B
330 4
100 AcDbSymbolTableRecord
100 AcDbTextStyleTableRecord
2 STANDARD
70 0
40 0.0
41 1.0
50 0.0
71 0
42 2.5
3 arial.ttf
4
0 STYLE
5 1C
330 4
100 AcDbSymbolTableRecord
100 AcDbTextStyleTableRecord
2 BOLD
70 0
40 0.0
41 1.0
50 0.0
71 0
42 2.5
3 arialbd.ttf
4
0 ENDTAB
0 TABLE
2 VIEW
5 5
330 0
100 AcDbSymbolTable
70 0
0 ENDTAB
0 TABLE
2 UCS
5 6
330 0
100 AcDbSymbolTable
70 0
0 ENDTAB
0 TABLE
2 APPID
5 7
330 0
100 AcDbSymbolTable
70 1
0 APPID
5 1D
330 7
100 AcDbSymbolTableRecord
100 AcDbRegAppTableRecord
2 ACAD
70 0
0 ENDTAB
0 TABLE
2 DIMSTYLE
5 8
330 0
100 AcDbSymbolTable
70 1
100 AcDbDimStyleTable
0 DIMSTYLE
105 1E
330 8
100 AcDbSymbolTableRecord
100 AcDbDimStyleTableRecord
2 STANDARD
70 0
0 ENDTAB
0 TABLE
2 BLOCK_RECORD
5 9
330 0
100 AcDbSymbolTable
70 2
0 BLOCK_RECORD
5 10
330 9
100 AcDbSymbolTableRecord
100 AcDbBlockTableRecord
2 *Model_Space
340 27
0 BLOCK_RECORD
5 11
330 9
100 AcDbSymbolTableRecord
100 AcDbBlockTableRecord
2 *Paper_Space
340 28
0 ENDTAB
0 ENDSEC
`

// blocks holds the model, in which the entities stand, and a sheet of paper,
// which is empty but must exist.
const blocks = `
0 SECTION
2 BLOCKS
0 BLOCK
5 12
330 10
100 AcDbEntity
8 0
100 AcDbBlockBegin
2 *Model_Space
70 0
10 0.0
20 0.0
30 0.0
3 *Model_Space
1
0 ENDBLK
5 13
330 10
100 AcDbEntity
8 0
100 AcDbBlockEnd
0 BLOCK
5 14
330 11
100 AcDbEntity
67 1
8 0
100 AcDbBlockBegin
2 *Paper_Space
70 0
10 0.0
20 0.0
30 0.0
3 *Paper_Space
1
0 ENDBLK
5 15
330 11
100 AcDbEntity
67 1
8 0
100 AcDbBlockEnd
0 ENDSEC
`
