package main

import "github.com/spf13/cobra"

// group is a job that commands help with.
type group struct {
	id, title string
	commands  []*cobra.Command
}

// grouped lists the commands by the job they help with. The jobs come in the
// order in which a class comes about; the help sorts the commands of each.
func grouped(s *streams) []group {
	return []group{
		{"desk", "All of it in your browser:", []*cobra.Command{newDeskCmd(s)}},
		{"music", "Your music:", []*cobra.Command{newDemoCmd(s), newAnalyzeCmd(s), newCorrectCmd(s)}},
		{"class", "Your class:", []*cobra.Command{
			newCheckCmd(s), newFitCmd(s), newRelayCmd(s), newMovesCmd(s),
		}},
		{"teach", "To teach:", []*cobra.Command{newMapCmd(s), newPageCmd(s), newPackCmd(s), newUnpackCmd(s)}},
		{"programs", "For programs:", []*cobra.Command{newSchemaCmd(s)}},
	}
}

// addGroups adds the commands to the root, each below the heading of its job.
func addGroups(root *cobra.Command, groups []group) {
	for _, g := range groups {
		root.AddGroup(&cobra.Group{ID: g.id, Title: g.title})
		for _, cmd := range g.commands {
			cmd.GroupID = g.id
			root.AddCommand(cmd)
		}
	}
	root.SetCompletionCommandGroupID("programs")
}
