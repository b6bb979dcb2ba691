/** Bytes of a WebAssembly module, section by section (WebAssembly core specification 2.0, binary format). */

export class Bytes {
  readonly list: number[] = [];

  byte(...bytes: readonly number[]): this {
    for (const each of bytes) this.list.push(each);
    return this;
  }

  /** Unsigned LEB128, up to 2³². */
  unsigned(value: number): this {
    let rest = value;
    while (rest >= 128) {
      this.list.push((rest % 128) + 128);
      rest = Math.floor(rest / 128);
    }
    this.list.push(rest);
    return this;
  }

  append(other: Bytes): this {
    for (const each of other.list) this.list.push(each);
    return this;
  }

  /** Its length, then its bytes. */
  sized(other: Bytes): this {
    return this.unsigned(other.list.length).append(other);
  }

  text(value: string): this {
    const encoded = new TextEncoder().encode(value);
    return this.unsigned(encoded.length).byte(...encoded);
  }
}

export const I32 = 0x7f;
export const F64 = 0x7c;
export const V128 = 0x7b;
const EMPTY_BLOCK = 0x40;

/** One function of a module under construction; parameters are locals 0, 1 … */
export class FunctionBody {
  readonly code = new Bytes();
  private readonly locals: number[] = [];
  private readonly parameters: number;

  constructor(parameters: number) {
    this.parameters = parameters;
  }

  local(type: number): number {
    this.locals.push(type);
    return this.parameters + this.locals.length - 1;
  }

  get(local: number): this {
    this.code.byte(0x20).unsigned(local);
    return this;
  }

  set(local: number): this {
    this.code.byte(0x21).unsigned(local);
    return this;
  }

  tee(local: number): this {
    this.code.byte(0x22).unsigned(local);
    return this;
  }

  call(index: number): this {
    this.code.byte(0x10).unsigned(index);
    return this;
  }

  /** Runs `body` when the i32 on the stack is not zero. */
  when(body: () => void): this {
    this.code.byte(0x04, EMPTY_BLOCK);
    body();
    this.code.byte(0x0b);
    return this;
  }

  /** Runs `body` again and again while `pointer`, moved on by `step` bytes, is below `end`. */
  loop(pointer: number, end: number, step: number, body: () => void): this {
    this.code.byte(0x03, EMPTY_BLOCK);
    body();
    this.get(pointer).code.byte(0x41, step, 0x6a);
    this.tee(pointer).get(end).code.byte(0x49, 0x0d, 0x00, 0x0b);
    return this;
  }

  zero(): this {
    this.code.byte(0x41, 0x00);
    return this;
  }

  simd(opcode: number, ...immediates: readonly number[]): this {
    this.code
      .byte(0xfd)
      .unsigned(opcode)
      .byte(...immediates);
    return this;
  }

  /** A SIMD memory instruction; `lane` for those that name one. */
  memory(opcode: number, offset: number, align: number, lane?: number): this {
    this.code.byte(0xfd).unsigned(opcode).byte(align).unsigned(offset);
    if (lane !== undefined) this.code.byte(lane);
    return this;
  }

  encoded(): Bytes {
    const out = new Bytes().unsigned(this.locals.length);
    for (const type of this.locals) out.byte(1, type);
    return out.append(this.code).byte(0x0b);
  }
}

export interface FunctionType {
  readonly parameters: readonly number[];
  readonly results: readonly number[];
}

export interface ModuleParts {
  /** Imported from the namespace `m`, in the order of their function index. */
  readonly imports: readonly { readonly name: string; readonly type: FunctionType }[];
  /** Exported by name; each takes (base: i32, end: i32) and gives an i32. */
  readonly functions: readonly { readonly name: string; readonly body: FunctionBody }[];
}

/** A module that imports its memory as `m.memory`. */
export function encodeModule({ imports, functions }: ModuleParts): Uint8Array<ArrayBuffer> {
  const section = (id: number, count: number, content: Bytes): Bytes =>
    new Bytes().byte(id).sized(new Bytes().unsigned(count).append(content));
  const types = new Bytes();
  const imported = new Bytes();
  const declared = new Bytes();
  const exported = new Bytes();
  const bodies = new Bytes();

  types.byte(0x60, 2, I32, I32, 1, I32);
  imported.text('m').text('memory').byte(0x02, 0x00).unsigned(0);
  imports.forEach(({ name, type }, at) => {
    types.byte(0x60, type.parameters.length, ...type.parameters, type.results.length, ...type.results);
    imported
      .text('m')
      .text(name)
      .byte(0x00)
      .unsigned(at + 1);
  });
  functions.forEach(({ name, body }, at) => {
    declared.unsigned(0);
    exported
      .text(name)
      .byte(0x00)
      .unsigned(imports.length + at);
    bodies.sized(body.encoded());
  });

  const out = new Bytes().byte(0x00, 0x61, 0x73, 0x6d, 0x01, 0x00, 0x00, 0x00);
  out.append(section(1, 1 + imports.length, types));
  out.append(section(2, 1 + imports.length, imported));
  out.append(section(3, functions.length, declared));
  out.append(section(7, functions.length, exported));
  out.append(section(10, functions.length, bodies));
  return new Uint8Array(out.list);
}
