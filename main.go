// Wickrule checks candle recipes.
package main

import (
	"context"
	"fmt"
	"os"
	"os/signal"
	"syscall"

	"wickrule/cli"
)

func main() { os.Exit(run()) }

func run() int {
	env, err := cli.System()
	if err != nil {
		fmt.Fprintln(os.Stderr, "wickrule:", err)
		return cli.NotWorked
	}
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer stop()
	return cli.Run(ctx, os.Args[1:], env)
}
