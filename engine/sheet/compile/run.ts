/** Runs a program: once for what stays the same, then block by block. */
import { curveProblem } from '../curves.ts';
import type { Argument, Sheet } from '../types.ts';
import { runProcedure } from './procedures.ts';
import type { Program } from './program.ts';

export type LaneArgument = Argument | Float64Array;

interface View {
  readonly key: string;
  readonly values: Float64Array;
}

/** One run over the lanes of a program. Runs of the same program may take turns. */
export class LaneRun {
  private readonly program: Program;
  private readonly sheet: Sheet;
  private readonly given: Readonly<Record<string, LaneArgument | undefined>>;
  /** The program's slots as this run left them. */
  private slots: Float64Array | undefined;
  private views: readonly View[] = [];
  private viewed: Float64Array | undefined;
  private viewedFrom = 0;

  constructor(program: Program, sheet: Sheet, given: Readonly<Record<string, LaneArgument | undefined>>) {
    this.program = program;
    this.sheet = sheet;
    this.given = given;
  }

  /** Computes all that is the same for all lanes. */
  start(): void {
    const { program } = this;
    const { numbers } = program.arena;
    for (const [key, slot] of program.slots) {
      if (this.sheet.symbols[key]!.kind === 'input') numbers[slot] = this.inputNumber(key);
    }
    for (const stage of program.stages) {
      stage.once(0, 0);
      for (const key of stage.procedures) {
        if (program.slots.has(key)) runProcedure(program, this.sheet, key, this.fixed, 0, 1);
      }
    }
    const [first, count] = program.slotRange;
    this.slots = program.arena.numbers.slice(first, first + count);
  }

  /** Value of a derived symbol that is the same for all lanes. */
  fixedValue(key: string): number {
    return this.slots![this.program.slots.get(key)! - this.program.slotRange[0]]!;
  }

  /** Takes the run up again after another may have used the program. */
  resume(): void {
    this.program.arena.numbers.set(this.slots!, this.program.slotRange[0]);
  }

  /** Computes lanes `from` to `to` and hands each varying symbol's values to `take`. */
  block(from: number, to: number, take: (key: string, values: Float64Array) => void): void {
    const { arena, blockBytes } = this.program;
    arena.withBlock(blockBytes, (base) => this.compute(base, from, to, take));
  }

  private compute(
    base: number,
    from: number,
    to: number,
    take: (key: string, values: Float64Array) => void,
  ): void {
    const { program, sheet } = this;
    const count = to - from;
    const even = count + (count & 1);
    const { numbers } = program.arena;
    for (const [key, column] of program.columns) {
      const lanes = this.given[key];
      if (!(lanes instanceof Float64Array)) continue;
      const at = base / 8 + column;
      numbers.set(lanes.subarray(from, to), at);
      if (even > count) numbers[at + count] = numbers[at + count - 1]!;
    }
    for (const stage of program.stages) {
      stage.loop(base, base + even * 8);
      for (const key of stage.procedures) {
        if (program.columns.has(key)) runProcedure(program, sheet, key, this.fixed, base, even);
      }
    }
    for (const { key, values } of this.viewsOf(base / 8)) {
      take(key, count === values.length ? values : values.subarray(0, count));
    }
  }

  /** Whole columns of what is computed, looked up once as long as the memory stays where it is. */
  private viewsOf(first: number): readonly View[] {
    const { arena, columns, lanesPerBlock } = this.program;
    if (this.viewed !== arena.numbers || this.viewedFrom !== first) {
      this.viewed = arena.numbers;
      this.viewedFrom = first;
      this.views = [...columns]
        .filter(([key]) => !(this.given[key] instanceof Float64Array))
        .map(([key, column]) => ({
          key,
          values: arena.numbers.subarray(first + column, first + column + lanesPerBlock),
        }));
    }
    return this.views;
  }

  /** What a procedure reads that is the same for all lanes. */
  private readonly fixed = (key: string): Argument | undefined => {
    const spec = this.sheet.symbols[key]!;
    if (spec.kind === 'constant') return this.sheet.constants[key]!;
    const slot = this.program.slots.get(key);
    if (slot !== undefined) return this.program.arena.numbers[slot]!;
    const argument = this.given[key];
    if (spec.kind !== 'curve' || argument === undefined || argument instanceof Float64Array) return undefined;
    return typeof argument === 'object' && curveProblem(spec.name, argument) === undefined
      ? argument
      : undefined;
  };

  private inputNumber(key: string): number {
    const argument = this.given[key];
    return typeof argument === 'number' ? argument : Number.NaN;
  }
}
