package dsp

// MeanRow is the mean of rows of one length, column by column. There must be a
// row.
func MeanRow(rows [][]float64) []float64 {
	sum := make([]float64, len(rows[0]))
	for _, row := range rows {
		for j, v := range row {
			sum[j] += v / float64(len(rows))
		}
	}
	return sum
}
