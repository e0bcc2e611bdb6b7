import { EXIT } from "./io.ts";
import { nodeIo } from "./node-io.ts";
import { run } from "./run.ts";

// A reader that has seen enough (`| head`) closes the pipe: no fault of anyone's.
for (const stream of [process.stdout, process.stderr]) {
  stream.on("error", (error: NodeJS.ErrnoException) => {
    if (error.code === "EPIPE") process.exit(process.exitCode ?? EXIT.sound);
    throw error;
  });
}

process.exitCode = await run(process.argv.slice(2), nodeIo());
