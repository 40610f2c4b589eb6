/** Jobs waiting for their time, earliest first: a binary heap over a shared list of times, allocated once. */
export interface ReadyHeap {
  push(job: number): void;
  /** Takes the earliest away; must not be called when empty. */
  pop(): number;
  /** The earliest time; infinity when empty. */
  next(): number;
  clear(): void;
}

/** A heap for up to `capacity` jobs, ordered by `times[job]`, then by the job's number. */
export function readyHeap(times: Float64Array, capacity: number): ReadyHeap {
  const items = new Int32Array(capacity + 1);
  let size = 0;
  const before = (a: number, b: number): boolean => {
    const first = times[a] as number;
    const second = times[b] as number;
    return first < second || (first === second && a < b);
  };
  return {
    push(job) {
      let at = size;
      size += 1;
      while (at > 0) {
        const above = (at - 1) >> 1;
        const parent = items[above] as number;
        if (!before(job, parent)) break;
        items[at] = parent;
        at = above;
      }
      items[at] = job;
    },
    pop() {
      const top = items[0] as number;
      size -= 1;
      const moved = items[size] as number;
      let at = 0;
      for (let below = 1; below < size; below = 2 * at + 1) {
        if (below + 1 < size && before(items[below + 1] as number, items[below] as number)) below += 1;
        const child = items[below] as number;
        if (!before(child, moved)) break;
        items[at] = child;
        at = below;
      }
      items[at] = moved;
      return top;
    },
    next() {
      return size === 0 ? Number.POSITIVE_INFINITY : (times[items[0] as number] as number);
    },
    clear() {
      size = 0;
    },
  };
}
