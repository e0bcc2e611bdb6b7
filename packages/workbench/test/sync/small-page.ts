import { registerOffline } from "../../src/offline/register.ts";
import { chooseSource } from "../../src/sync/choose-source.ts";
import { browserShelf } from "../../src/sync/shelf.ts";

// The smallest page that keeps cars: what the browser tests take in hand.
const registered = registerOffline(() => undefined);
const chosen = await chooseSource();
Object.assign(globalThis, { chosen, registered, browserShelf });
document.title = chosen.ok ? chosen.source.kind : chosen.why;
