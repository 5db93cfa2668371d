package fonts

import _ "embed"

// Licence is the licence of the faces, the SIL Open Font License 1.1, which has to
// go wherever the faces go.
//
//go:embed OFL.txt
var Licence string
