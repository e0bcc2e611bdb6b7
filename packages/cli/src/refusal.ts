/** Why a command cannot do what was asked, in a plain sentence for the one who typed it. Ends the command with exit code 2. */
export class Refusal extends Error {
  override readonly name = "Refusal";
}
