// Package edit changes a class file without writing it anew: only the bytes
// of what changes are replaced, so that comments, order, quotes and the lines
// nobody asked to change stay as they are.
//
// Places are those of the file as it was read (plan.Item.Pos, plan.Part.Pos);
// all changes given to Apply refer to the same file.
package edit
