package beat

// Version names the analyser. It is part of the key under which results are
// cached: raise it with every change, of a decoder or a stage, that can alter
// an answer.
const Version = "12"
