interface Waiting {
  push(what: number, weight: number): void;
  /** The lightest; undefined when nothing waits. */
  pop(): number | undefined;
}

/** Numbers that wait, the lightest in front: a binary heap. */
export function waitingLine(): Waiting {
  const heap: (readonly [weight: number, what: number])[] = [];
  const weight = (at: number): number => heap[at]?.[0] ?? Number.POSITIVE_INFINITY;
  const swap = (a: number, b: number): void => {
    const [one, other] = [heap[a], heap[b]];
    if (one !== undefined && other !== undefined) [heap[a], heap[b]] = [other, one];
  };
  return {
    push(what, heavy) {
      let at = heap.push([heavy, what]) - 1;
      for (let up = (at - 1) >> 1; at > 0 && weight(at) < weight(up); up = (at - 1) >> 1) {
        swap(at, up);
        at = up;
      }
    },
    pop() {
      const top = heap[0];
      const last = heap.pop();
      if (top === undefined || last === undefined) return undefined;
      if (heap.length > 0) {
        heap[0] = last;
        for (let at = 0; ; ) {
          const left = 2 * at + 1;
          const down = weight(left) <= weight(left + 1) ? left : left + 1;
          if (weight(down) >= weight(at)) break;
          swap(at, down);
          at = down;
        }
      }
      return top[1];
    },
  };
}
