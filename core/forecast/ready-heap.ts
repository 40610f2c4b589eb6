/**
 * Jobs waiting for their time, earliest first: one binary heap a queue, all over one list of times, allocated once. Times
 * are read from that list rather than handed over, because numbers handed from function to function may be boxed.
 */
export interface ReadyHeaps {
  /** How many wait in each queue. */
  readonly sizes: Int32Array;
  /** The earliest of a queue that isn't empty. */
  earliest(line: number): number;
  push(line: number, job: number): void;
  /** Takes the earliest away; the queue must not be empty. */
  pop(line: number): number;
}

/** Heaps for up to `capacity` jobs each, ordered by `times[job]`, then by the job's number. */
export function readyHeaps(times: Float64Array, lines: number, capacity: number): ReadyHeaps {
  const items = new Int32Array(lines * (capacity + 1));
  const sizes = new Int32Array(lines);
  const before = (a: number, b: number): boolean => {
    const first = times[a] as number;
    const second = times[b] as number;
    return first < second || (first === second && a < b);
  };
  return {
    sizes,
    earliest: (line) => items[line * (capacity + 1)] as number,
    push(line, job) {
      const base = line * (capacity + 1);
      let at = sizes[line] as number;
      sizes[line] = at + 1;
      while (at > 0) {
        const above = (at - 1) >> 1;
        const parent = items[base + above] as number;
        if (!before(job, parent)) break;
        items[base + at] = parent;
        at = above;
      }
      items[base + at] = job;
    },
    pop(line) {
      const base = line * (capacity + 1);
      const top = items[base] as number;
      const size = (sizes[line] as number) - 1;
      sizes[line] = size;
      const moved = items[base + size] as number;
      let at = 0;
      for (let below = 1; below < size; below = 2 * at + 1) {
        if (below + 1 < size && before(items[base + below + 1] as number, items[base + below] as number)) below += 1;
        const child = items[base + below] as number;
        if (!before(child, moved)) break;
        items[base + at] = child;
        at = below;
      }
      items[base + at] = moved;
      return top;
    },
  };
}
