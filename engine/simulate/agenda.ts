/** What is set to happen to an axis at known times: its command's law changes, a force sets in, the drive goes, a brake holds. */
import type { Happenings } from './reference.ts';

const NEVER = Number.POSITIVE_INFINITY;

export type Due = 'law' | 'force-on' | 'force-off' | 'drive-off' | 'brake-holds';

export class Agenda {
  /** s of the next thing set to happen; Infinity where there is none. */
  next = NEVER;
  private readonly breaks: readonly number[];
  private nextBreak = 0;
  private forceFrom: number;
  private forceTo: number;
  private driveOff: number;
  private brake = NEVER;

  /** `breaks` are the times (s) at which the command changes its law and a step must end. */
  constructor(happenings: Happenings, breaks: readonly number[]) {
    this.breaks = breaks;
    this.forceFrom = happenings.forceFrom;
    this.forceTo = happenings.forceTo;
    this.driveOff = happenings.driveOff;
    this.foresee();
  }

  brakeHoldsAt(t: number): void {
    this.brake = t;
    this.foresee();
  }

  /** Everything due by `t`, in the order in which it acts; it is then off the list. */
  due(t: number): readonly Due[] {
    const list: Due[] = [];
    if (this.nextBreak < this.breaks.length && this.breaks[this.nextBreak]! <= t) {
      this.nextBreak++;
      list.push('law');
    }
    if (this.forceFrom <= t) {
      this.forceFrom = NEVER;
      list.push('force-on');
    }
    if (this.forceTo <= t) {
      this.forceTo = NEVER;
      list.push('force-off');
    }
    if (this.driveOff <= t) {
      this.driveOff = NEVER;
      list.push('drive-off');
    }
    if (this.brake <= t) {
      this.brake = NEVER;
      list.push('brake-holds');
    }
    this.foresee();
    return list;
  }

  private foresee(): void {
    const law = this.nextBreak < this.breaks.length ? this.breaks[this.nextBreak]! : NEVER;
    this.next = Math.min(law, this.driveOff, this.forceFrom, this.forceTo, this.brake);
  }
}
