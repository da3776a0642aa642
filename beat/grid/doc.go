// Package grid puts beats where the sound says they are, to the millisecond:
// on one straight line where the music is on a grid, along a smooth curve
// where people play.
package grid
