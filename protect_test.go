package main

import (
	"archive/tar"
	"bytes"
	"compress/gzip"
	"crypto/sha256"
	"fmt"
	"net/http"
	"net/http/httptest"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"go.yaml.in/yaml/v3"
)

// What the CI files of `wickrule protect` have run is taken out of them and run,
// in a copy of a repository with the demo shop, as their hosts do it: a good
// change passes, a bad one is stopped and it is said what is wrong.
func TestTheCIFilesStopABadChange(t *testing.T) {
	needs(t, "git", "curl", "make", "bash", "tar", "sha256sum")
	server, sum := archiveServer(t)
	fetched := map[string]string{"WICKRULE_ARCHIVE": server + "/wickrule-0-linux-amd64.tar.gz", "WICKRULE_SHA256": sum}
	for _, c := range []struct {
		word, file string
		run        func(t *testing.T, file, folder string, variables map[string]string) (string, error)
	}{
		{"github", ".github/workflows/recipes.yml", runGitHub},
		{"gitlab", ".gitlab-ci.yml", runGitLab},
		{"make", "Makefile", func(t *testing.T, _, folder string, _ map[string]string) (string, error) {
			return command(t, folder, nil, "make", "--no-print-directory", "recipes")
		}},
	} {
		t.Run(c.word, func(t *testing.T) {
			origin := repository(t, c.word)
			copied := checkout(t, origin)
			out, err := c.run(t, c.file, copied, fetched)
			require.NoError(t, err, out)
			assert.Contains(t, out, "22 recipes checked: nothing found")

			recipe := filepath.Join(origin, "our shop", "recipes", "tide-pillar.candle.hcl")
			replace(t, recipe, `load = "5 % of wax"`, `load = "7 % of wax"`)
			git(t, origin, "commit", "-q", "-a", "-m", "More scent")
			out, err = c.run(t, c.file, checkout(t, origin), fetched)
			require.Error(t, err)
			assert.Contains(t, out, "7 % of wax is over what Northlight paraffin, pillar grade holds (6 %")
			assert.Contains(t, out, "lower the load to 6 % of wax")

			if c.word == "make" {
				return
			}
			out, err = c.run(t, c.file, copied, nil)
			require.Error(t, err)
			assert.Contains(t, out, "WICKRULE_ARCHIVE: say at the top of this file where its archive lies")
			out, err = c.run(t, c.file, copied, map[string]string{"WICKRULE_ARCHIVE": fetched["WICKRULE_ARCHIVE"], "WICKRULE_SHA256": strings.Repeat("0", 64)})
			require.Error(t, err, "another program than the one meant is not run")
			assert.NotContains(t, out, "recipes checked")
		})
	}
}

// The CI file for GitLab is one by that host's own JSON schema, which GitLab
// publishes under the MIT licence (app/assets/javascripts/editor/schema/ci.json
// in its sources; here without its prose).
func TestTheGitLabFileFitsItsSchema(t *testing.T) {
	schema, err := jsonschema.NewCompiler().Compile("testdata/ci/gitlab-ci.schema.json")
	require.NoError(t, err)
	var file any
	require.NoError(t, yaml.Unmarshal([]byte(protectFile(t, "gitlab")), &file))
	require.NoError(t, schema.Validate(file))
	file.(map[string]any)["recipes"].(map[string]any)["scripts"] = "wickrule check"
	require.Error(t, schema.Validate(file), "the schema tells a wrong file")
}

// runGitHub runs the steps of a workflow as its runner does: each in a bash of
// its own that stops at the first failure, with what earlier steps put on PATH.
func runGitHub(t *testing.T, file, folder string, variables map[string]string) (string, error) {
	var workflow struct {
		Name        string
		On          map[string]any
		Permissions map[string]string
		Jobs        map[string]struct {
			RunsOn string `yaml:"runs-on"`
			Env    map[string]string
			Steps  []struct{ Name, Uses, Run string }
		}
	}
	decode(t, filepath.Join(folder, file), &workflow)
	job, ok := workflow.Jobs["check"]
	require.True(t, ok)
	require.Contains(t, workflow.On, "push")
	require.Contains(t, workflow.On, "pull_request")
	require.NotEmpty(t, job.RunsOn)
	require.True(t, strings.HasPrefix(job.Steps[0].Uses, "actions/checkout@"))
	temp := t.TempDir()
	paths := filepath.Join(temp, "paths")
	require.NoError(t, os.WriteFile(paths, nil, 0o600))
	env := with(job.Env, variables)
	env["RUNNER_TEMP"], env["GITHUB_PATH"] = temp, paths
	var said strings.Builder
	ran := 0
	for _, step := range job.Steps[1:] {
		added, err := os.ReadFile(paths)
		require.NoError(t, err)
		env["PATH"] = strings.Join(append(strings.Fields(string(added)), systemPath), ":")
		out, err := command(t, folder, env, "bash", "-e", "-c", step.Run)
		said.WriteString(out)
		if err != nil {
			return said.String(), err
		}
		ran++
	}
	require.Equal(t, 2, ran)
	return said.String(), nil
}

// runGitLab runs a job as its runner does: all its lines in one shell that
// stops at the first failure.
func runGitLab(t *testing.T, file, folder string, variables map[string]string) (string, error) {
	var jobs map[string]struct {
		Image        string
		Variables    map[string]string
		Script       []string
		BeforeScript []string `yaml:"before_script"`
	}
	decode(t, filepath.Join(folder, file), &jobs)
	job := jobs["recipes"]
	require.NotEmpty(t, job.Script)
	env := with(job.Variables, variables)
	env["PATH"] = systemPath
	return command(t, folder, env, "bash", "-eo", "pipefail", "-c", strings.Join(append(job.BeforeScript, job.Script...), "\n"))
}

// systemPath has no wickrule in it: the one that was fetched is run.
const systemPath = "/usr/local/bin:/usr/bin:/bin"

// archiveServer serves the program as a release's archive, and is its address
// and the archive's SHA-256.
func archiveServer(t *testing.T) (address, sum string) {
	t.Helper()
	path, err := exec.LookPath("wickrule")
	require.NoError(t, err)
	text, err := os.ReadFile(path)
	require.NoError(t, err)
	folder := t.TempDir()
	name := filepath.Join(folder, "wickrule-0-linux-amd64.tar.gz")
	f, err := os.Create(name)
	require.NoError(t, err)
	packed, err := gzip.NewWriterLevel(f, gzip.BestSpeed)
	require.NoError(t, err)
	w := tar.NewWriter(packed)
	require.NoError(t, w.WriteHeader(&tar.Header{Name: "wickrule-0-linux-amd64/wickrule", Mode: 0o755, Size: int64(len(text))}))
	_, err = w.Write(text)
	require.NoError(t, err)
	require.NoError(t, w.Close())
	require.NoError(t, packed.Close())
	require.NoError(t, f.Close())
	archive, err := os.ReadFile(name)
	require.NoError(t, err)
	server := httptest.NewServer(http.FileServer(http.Dir(folder)))
	t.Cleanup(server.Close)
	return server.URL, fmt.Sprintf("%x", sha256.Sum256(archive))
}

// repository is one with the demo shop, protected by a set-up.
func repository(t *testing.T, word string) string {
	t.Helper()
	top := t.TempDir()
	git(t, top, "init", "-q")
	require.NoError(t, os.CopyFS(filepath.Join(top, "our shop"), os.DirFS("examples/shop")))
	out, err := command(t, top, nil, "wickrule", "protect", word)
	require.NoError(t, err, out)
	git(t, top, "add", ".")
	git(t, top, "commit", "-q", "-m", "Our shop")
	return top
}

// checkout is a fresh copy of a repository, as CI makes one.
func checkout(t *testing.T, origin string) string {
	t.Helper()
	top := filepath.Join(t.TempDir(), "a copy")
	git(t, origin, "clone", "-q", origin, top)
	return top
}

func git(t *testing.T, folder string, args ...string) {
	t.Helper()
	out, err := command(t, folder, nil, "git", append([]string{"-c", "user.name=A Chandler", "-c", "user.email=chandler@larkspur-quay.example"}, args...)...)
	require.NoError(t, err, out)
}

// command runs a program on a day the demo shop is judged on, and is what it
// says.
func command(t *testing.T, folder string, env map[string]string, name string, args ...string) (string, error) {
	t.Helper()
	c := exec.Command(name, args...)
	c.Dir = folder
	c.Env = append(os.Environ(), "WICKRULE_TEST_DAY=2026-10-20")
	for k, v := range env {
		c.Env = append(c.Env, k+"="+v)
	}
	out, err := c.CombinedOutput()
	return string(out), err
}

func protectFile(t *testing.T, word string) string {
	t.Helper()
	out, err := command(t, t.TempDir(), nil, "wickrule", "protect", "--show", word)
	require.NoError(t, err, out)
	return out
}

// decode reads YAML that may hold nothing but what into has.
func decode(t *testing.T, name string, into any) {
	t.Helper()
	text, err := os.ReadFile(name)
	require.NoError(t, err)
	d := yaml.NewDecoder(bytes.NewReader(text))
	d.KnownFields(true)
	require.NoError(t, d.Decode(into))
}

// with is the variables of a file, some of them set otherwise.
func with(variables, set map[string]string) map[string]string {
	all := map[string]string{}
	for k, v := range variables {
		all[k] = v
	}
	for k, v := range set {
		all[k] = v
	}
	return all
}

func replace(t *testing.T, name, from, to string) {
	t.Helper()
	text, err := os.ReadFile(name)
	require.NoError(t, err)
	require.Contains(t, string(text), from)
	require.NoError(t, os.WriteFile(name, []byte(strings.Replace(string(text), from, to, 1)), 0o644))
}

// needs skips the test where a program is missing.
func needs(t *testing.T, programs ...string) {
	t.Helper()
	for _, p := range programs {
		if _, err := exec.LookPath(p); err != nil {
			t.Skip("no " + p + " here")
		}
	}
}
