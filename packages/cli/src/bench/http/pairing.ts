import { createHash, randomBytes, timingSafeEqual } from "node:crypto";

/** Letters and digits that are not taken for one another. 32 of them: five bits each. */
const LETTERS = "ABCDEFGHJKLMNPQRSTUVWXYZ23456789";
const SECRET_LETTERS = 16;
const MOST_DEVICES = 32;

/** Which devices may use a shared bench. A secret pairs one device, once; the device then holds a token of its own. */
export class Pairing {
  readonly #onNewSecret: (secret: string) => void;
  readonly #secrets = new Map<string, { readonly isShown: boolean }>();
  readonly #tokens: Buffer[] = [];

  /** `onNewSecret` is told the secret to show, at once and whenever the shown one has been used. */
  constructor(onNewSecret: (secret: string) => void) {
    this.#onNewSecret = onNewSecret;
    this.#onNewSecret(this.#makeSecret(true));
  }

  /** A secret of its own for this machine's browser; the shown one stays. */
  ownSecret(): string {
    return this.#makeSecret(false);
  }

  /** Uses a secret up and gives the device's token; undefined where it is none, or was used. */
  pair(typed: string): string | undefined {
    const secret = typed.toUpperCase().replace(/[^A-Z0-9]/g, "");
    const key = hashOf(secret).toString("hex");
    const known = this.#secrets.get(key);
    if (!known || this.#tokens.length >= MOST_DEVICES) return undefined;
    this.#secrets.delete(key);
    const token = randomBytes(32).toString("base64url");
    this.#tokens.push(hashOf(token));
    if (known.isShown) this.#onNewSecret(this.#makeSecret(true));
    return token;
  }

  isPaired(token: string | undefined): boolean {
    if (token === undefined) return false;
    const hash = hashOf(token);
    return this.#tokens.some((each) => timingSafeEqual(each, hash));
  }

  #makeSecret(isShown: boolean): string {
    const letters = [...randomBytes(SECRET_LETTERS)].map((byte) => LETTERS[byte % LETTERS.length]).join("");
    this.#secrets.set(hashOf(letters).toString("hex"), { isShown });
    return letters.replace(/.{4}(?=.)/g, "$&-");
  }
}

const hashOf = (text: string): Buffer => createHash("sha256").update(text).digest();

/** Value of one cookie in a Cookie header. */
export function cookieOf(header: string | undefined, name: string): string | undefined {
  for (const pair of (header ?? "").split(";")) {
    const at = pair.indexOf("=");
    if (at !== -1 && pair.slice(0, at).trim() === name) return pair.slice(at + 1).trim();
  }
  return undefined;
}
