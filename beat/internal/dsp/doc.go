// Package dsp holds the small numeric tools that the stages of the analysis
// share: power spectra, windows, sample-rate conversion, medians.
package dsp
