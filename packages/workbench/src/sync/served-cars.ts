import { type Base, baseOf, viewOf } from "./car-view.ts";
import type { Items } from "./items.ts";
import type { ServedCar } from "./server-calls.ts";
import type { CarState } from "./source.ts";
import { editOf, type WaitingOperations } from "./waiting-operations.ts";

interface Followed {
  readonly base: Base;
  readonly revision: number;
}

/** The cars that this page follows, as the server last had them; kept, so that a page without a server has them too. */
export class ServedCars {
  readonly #items: Items;
  readonly #scope: string;
  readonly #waiting: WaitingOperations;
  readonly #followed = new Map<string, Followed>();

  constructor(items: Items, scope: string, waiting: WaitingOperations) {
    this.#items = items;
    this.#scope = scope;
    this.#waiting = waiting;
  }

  get names(): readonly string[] {
    return [...this.#followed.keys()];
  }

  isFollowed(name: string): boolean {
    return this.#followed.has(name);
  }

  /** Whether edits can be sent: a broken or missing file takes none until it is mended. */
  takesEdits(name: string): boolean {
    const condition = this.#followed.get(name)?.base.condition;
    return condition !== "broken" && condition !== "gone";
  }

  /** Takes in what the server has; an answer that was overtaken by a newer one is passed over. */
  take({ name, revision, text, condition, faults }: ServedCar): void {
    const known = this.#followed.get(name);
    if (known && known.revision >= revision && known.base.condition !== "gone") return;
    this.#followed.set(name, { base: baseOf(text, condition, faults), revision });
    if (condition !== "broken") this.#items.set(this.#key(name), text);
  }

  takeGone(name: string): void {
    const known = this.#followed.get(name);
    if (known) this.#followed.set(name, { ...known, base: { ...known.base, condition: "gone" } });
  }

  /** Another run of the server counts anew. */
  forgetRevisions(): void {
    for (const [name, followed] of this.#followed) this.#followed.set(name, { ...followed, revision: 0 });
  }

  /** Follows a car as it was last seen, without a server. Gives whether it was ever seen. */
  recall(name: string): boolean {
    const text = this.#items.get(this.#key(name));
    if (text !== undefined && !this.isFollowed(name)) this.#followed.set(name, { base: baseOf(text), revision: 0 });
    return this.isFollowed(name);
  }

  /** The car with the edits that wait laid over it. Throws RangeError where it is not followed. */
  view(name: string): CarState {
    const followed = this.#followed.get(name);
    if (!followed) throw new RangeError(`the car ${JSON.stringify(name)} has not been opened`);
    return viewOf(name, followed.base, this.#waiting.of(name).map(editOf));
  }

  text(name: string): string | undefined {
    return this.#followed.get(name)?.base.text;
  }

  #key(name: string): string {
    return `armwright:seen:${this.#scope}:${name}`;
  }
}
