// Package spectral measures, frame by frame, how much new sound begins.
package spectral
