package main

import "github.com/spf13/cobra"

// completion gives root the command that prints what a shell completes with.
func completion(root *cobra.Command) {
	cmd := &cobra.Command{
		Use:   "completion SHELL",
		Short: "Let the shell complete commands, flags and sizes with the Tab key",
		Long: `Completion prints what a shell needs to complete the commands and flags of
flatwright with the Tab key. The shells are bash, zsh, fish and powershell. It
holds for shells that are started after it has been put in its place.`,
		Example: `  bash         flatwright completion bash > ~/.local/share/bash-completion/completions/flatwright
  zsh          flatwright completion zsh > "${fpath[1]}/_flatwright"
  fish         flatwright completion fish > ~/.config/fish/completions/flatwright.fish
  PowerShell   flatwright completion powershell >> $PROFILE`,
		Args:      cobra.MatchAll(cobra.ExactArgs(1), cobra.OnlyValidArgs),
		ValidArgs: []string{"bash", "zsh", "fish", "powershell"},
		RunE: func(_ *cobra.Command, args []string) error {
			out := root.OutOrStdout()
			switch args[0] {
			case "zsh":
				return root.GenZshCompletion(out)
			case "fish":
				return root.GenFishCompletion(out, true)
			case "powershell":
				return root.GenPowerShellCompletionWithDesc(out)
			}
			return root.GenBashCompletionV2(out, true)
		},
	}
	root.CompletionOptions.DisableDefaultCmd = true
	root.AddCommand(cmd)
}
