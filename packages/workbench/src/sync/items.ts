/** Small texts that are on the disk as soon as they are set: the browser's localStorage, or, where that is closed, memory. */
export interface Items {
  /** Whether they outlast the page. */
  readonly isLasting: boolean;
  get(key: string): string | undefined;
  /** False where it could not be kept. */
  set(key: string, text: string): boolean;
  remove(key: string): void;
  keys(start: string): readonly string[];
}

export function storageItems(storage: Storage): Items {
  return {
    isLasting: true,
    get: (key) => storage.getItem(key) ?? undefined,
    set: (key, text) => {
      try {
        storage.setItem(key, text);
        return true;
      } catch {
        return false;
      }
    },
    remove: (key) => storage.removeItem(key),
    keys: (start) => {
      const found: string[] = [];
      for (let index = 0; index < storage.length; index++) {
        const key = storage.key(index);
        if (key?.startsWith(start)) found.push(key);
      }
      return found.sort();
    },
  };
}

export function memoryItems(texts = new Map<string, string>(), isLasting = false): Items {
  return {
    isLasting,
    get: (key) => texts.get(key),
    set: (key, text) => {
      texts.set(key, text);
      return true;
    },
    remove: (key) => {
      texts.delete(key);
    },
    keys: (start) => [...texts.keys()].filter((key) => key.startsWith(start)).sort(),
  };
}

/** The browser's storage, where it lets us. */
export function browserItems(): Items {
  try {
    const probe = "armwright:probe";
    localStorage.setItem(probe, "1");
    localStorage.removeItem(probe);
    return storageItems(localStorage);
  } catch {
    return memoryItems();
  }
}
