package main

import (
	"fmt"
	"runtime"
	"runtime/debug"

	"github.com/spf13/cobra"
)

func newVersion(env environment) *cobra.Command {
	return &cobra.Command{
		Use:     "version",
		Short:   "Print the version",
		Example: "  flatwright version",
		Args:    cobra.NoArgs,
		RunE: func(*cobra.Command, []string) error {
			info, _ := debug.ReadBuildInfo()
			_, err := fmt.Fprintln(env.out, version(info))
			return err
		},
	}
}

// version is the module's version, or the commit from which it was built.
func version(info *debug.BuildInfo) string {
	v := "unknown"
	if info != nil {
		v = info.Main.Version
		if v == "" || v == "(devel)" {
			v = "development"
		}
		settings := map[string]string{}
		for _, s := range info.Settings {
			settings[s.Key] = s.Value
		}
		if rev := settings["vcs.revision"]; rev != "" {
			v += ", commit " + rev[:min(12, len(rev))]
			if settings["vcs.modified"] == "true" {
				v += " with changes"
			}
		}
	}
	return fmt.Sprintf("flatwright %s (%s, %s/%s)", v, runtime.Version(), runtime.GOOS, runtime.GOARCH)
}
