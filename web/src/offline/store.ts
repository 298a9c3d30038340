/** A small store on this device (IndexedDB): what waits to be sent, and what was last read. */
const NAME = 'oakum'
export type Shelf = 'outbox' | 'kept'

let opened: Promise<IDBDatabase> | undefined

function open(): Promise<IDBDatabase> {
  opened ??= new Promise((resolve, reject) => {
    const asked = indexedDB.open(NAME, 1)
    asked.onupgradeneeded = () => {
      asked.result.createObjectStore('outbox')
      asked.result.createObjectStore('kept')
    }
    asked.onsuccess = () => resolve(asked.result)
    asked.onerror = () => reject(asked.error)
  })
  return opened
}

async function within<T>(
  shelf: Shelf,
  mode: IDBTransactionMode,
  act: (store: IDBObjectStore) => IDBRequest<T>,
): Promise<T> {
  const db = await open()
  return new Promise((resolve, reject) => {
    const transaction = db.transaction(shelf, mode)
    const request = act(transaction.objectStore(shelf))
    // done means on disk, not merely asked for
    transaction.oncomplete = () => resolve(request.result)
    transaction.onerror = () => reject(transaction.error)
    transaction.onabort = () => reject(transaction.error)
  })
}

export const putOn = (shelf: Shelf, key: string, value: unknown) =>
  within(shelf, 'readwrite', (s) => s.put(value, key))
export const takeFrom = <T>(shelf: Shelf, key: string) =>
  within<T | undefined>(shelf, 'readonly', (s) => s.get(key))
export const removeFrom = (shelf: Shelf, key: string) => within(shelf, 'readwrite', (s) => s.delete(key))
export const allOn = <T>(shelf: Shelf) => within<T[]>(shelf, 'readonly', (s) => s.getAll())
