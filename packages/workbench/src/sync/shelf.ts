/** Larger things, kept when the promise is: the browser's IndexedDB, or, where that is closed, memory. */
export interface Shelf {
  get(key: string): Promise<Uint8Array<ArrayBuffer> | string | undefined>;
  put(key: string, content: Uint8Array<ArrayBuffer> | string): Promise<boolean>;
  remove(key: string): Promise<void>;
  /** In order. */
  keys(start: string): Promise<readonly string[]>;
}

export function memoryShelf(things = new Map<string, Uint8Array<ArrayBuffer> | string>()): Shelf {
  return {
    get: async (key) => things.get(key),
    put: async (key, content) => {
      things.set(key, content);
      return true;
    },
    remove: async (key) => {
      things.delete(key);
    },
    keys: async (start) => [...things.keys()].filter((key) => key.startsWith(start)).sort(),
  };
}

const STORE = "things";

/** Opens the browser's shelf. */
export async function browserShelf(name = "armwright"): Promise<Shelf> {
  try {
    const opening = indexedDB.open(name, 1);
    opening.onupgradeneeded = () => opening.result.createObjectStore(STORE);
    const base = await done(opening);
    return {
      get: (key) => done(base.transaction(STORE).objectStore(STORE).get(key)),
      put: (key, content) => written(base, (store) => store.put(content, key)),
      remove: async (key) => {
        await written(base, (store) => store.delete(key));
      },
      keys: async (start) => {
        const range = IDBKeyRange.bound(start, `${start}\uffff`);
        return (await done(base.transaction(STORE).objectStore(STORE).getAllKeys(range))).map(String);
      },
    };
  } catch {
    return memoryShelf();
  }
}

function done<T>(request: IDBRequest<T>): Promise<T> {
  return new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error ?? new Error("the browser's storage failed"));
  });
}

function written(base: IDBDatabase, change: (store: IDBObjectStore) => void): Promise<boolean> {
  return new Promise((resolve) => {
    const transaction = base.transaction(STORE, "readwrite");
    transaction.oncomplete = () => resolve(true);
    transaction.onabort = () => resolve(false);
    transaction.onerror = () => resolve(false);
    change(transaction.objectStore(STORE));
  });
}
