import { EXIT } from "./io.ts";
import { nodeIo, reasonOf } from "./node-io.ts";
import { run } from "./run.ts";

// A reader that has seen enough (`| head`) closes the pipe: no fault of anyone's.
for (const stream of [process.stdout, process.stderr]) {
  stream.on("error", (error: NodeJS.ErrnoException) => {
    if (error.code === "EPIPE") process.exit(process.exitCode ?? EXIT.sound);
    // A full disk, a device that is gone: the words cannot be had, and the reader has to know.
    if (stream === process.stdout) process.stderr.write(`The output cannot be written: ${reasonOf(error)}\n`);
    process.exit(EXIT.refused);
  });
}

process.exitCode = await run(process.argv.slice(2), nodeIo());
