// Package release knows which version of the program this is and what changed from
// one version to the next.
package release

import "gussetwright/assets"

// version is stamped into a packaged program by the linker (-X); see cmd/task.
var version string

// Version returns the version of the program, as in 1.2.3. A program that was not
// built by the task runner says so: 1.2.3+local, from the newest entry of the changes.
func Version() string {
	if version != "" {
		return version
	}
	changes, err := Changes()
	if err != nil || len(changes) == 0 {
		return "local"
	}
	return changes[0].Version + "+local"
}

// Changes returns what changed in every version, the newest first.
func Changes() ([]Change, error) { return Parse(assets.Changes) }
