/** One memory shared by all programs: constants and single values below, the columns of the block at work above. */

const PAGE = 65536;
const STATIC_BYTES = 64 * PAGE;
const FIRST_PAGES = 64 + 16;

export class Arena {
  readonly memory = new WebAssembly.Memory({ initial: FIRST_PAGES });
  /** All of the memory as numbers; made anew when the memory grows. */
  numbers = new Float64Array(this.memory.buffer);
  private top = 0;
  /** Bytes of blocks in use. */
  private taken = 0;

  /** Byte address of `count` numbers that stay reserved, or undefined when the memory for them is used up. */
  reserve(count: number): number | undefined {
    const at = this.top;
    if (at + count * 8 > STATIC_BYTES) return undefined;
    this.top += count * 8;
    return at;
  }

  /**
   * Hands `work` the byte address of a block of its own. A procedure run meanwhile may run lanes of its own, and takes
   * the place after it; `numbers` may then be another array.
   */
  withBlock(bytes: number, work: (base: number) => void): void {
    const base = STATIC_BYTES + this.taken;
    const lacking = base + bytes - this.memory.buffer.byteLength;
    if (lacking > 0) {
      this.memory.grow(Math.ceil(lacking / PAGE));
      this.numbers = new Float64Array(this.memory.buffer);
    }
    this.taken += bytes;
    try {
      work(base);
    } finally {
      this.taken -= bytes;
    }
  }
}

let current: Arena | undefined;

/** The shared memory with room for `count` more numbers. A full one lives on with the programs that use it. */
export function arenaFor(count: number): { arena: Arena; address: number } {
  const address = current?.reserve(count);
  if (current && address !== undefined) return { arena: current, address };
  current = new Arena();
  const first = current.reserve(count);
  if (first === undefined)
    throw new RangeError(`a sheet needs ${count} numbers, more than a program may hold`);
  return { arena: current, address: first };
}
