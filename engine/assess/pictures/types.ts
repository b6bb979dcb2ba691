/** What a picture of an axis or a spindle is: plain data, numbers in SI, to be drawn or printed by whoever shows it. */
import type { Verdict } from '../../quantity/verdict.ts';

/** What a line says: a limit, what is asked, or something at low, nominal or high mains. */
export type Role = 'limit' | 'asked' | 'low' | 'nominal' | 'high';

export interface Scale {
  readonly name: string;
  /** The unit it is read in; the numbers themselves are SI. */
  readonly unit: string;
  readonly log?: boolean;
}

export interface Series {
  /** Plain and unique within the picture; stands at the line and over the column of the table. */
  readonly name: string;
  readonly role: Role;
  /** SI, x ascending. */
  readonly points: readonly (readonly [x: number, y: number])[];
}

export interface Mark {
  readonly name: string;
  readonly x: number;
  readonly y: number;
  readonly role: Role;
  readonly verdict?: Verdict;
  /** The finding that judges it. */
  readonly finding?: string;
}

/** Something asked of a spindle at one speed, from a room below: a cut that is wanted. */
export interface Demand {
  readonly name: string;
  /** rad/s and N·m at the spindle. */
  readonly speed: number;
  readonly torque: number;
  readonly verdict: Verdict;
}

export interface Table {
  readonly columns: readonly { readonly name: string; readonly unit: string }[];
  /** SI; null where a line has ended. */
  readonly rows: readonly (readonly (number | null)[])[];
}

interface PictureBase {
  readonly id: string;
  readonly title: string;
  /** The headline: 'Will the screw whirl?' */
  readonly question: string;
  /** The answer in a sentence or two, with the numbers; what is missing when something is. */
  readonly says: string;
  /** What was assumed in drawing it. */
  readonly note?: string;
  /** The worst of its findings. */
  readonly verdict: Verdict;
  /** Ids of the findings it illustrates, the first one leading. */
  readonly findings: readonly string[];
  /** Facts that would have to be known; nothing is drawn then. */
  readonly missing: readonly string[];
}

export interface ChartPicture extends PictureBase {
  readonly kind: 'chart';
  readonly x: Scale;
  readonly y: Scale;
  readonly series: readonly Series[];
  readonly marks: readonly Mark[];
  readonly table: Table;
}

export interface FlowStep {
  /** Where on the way it is, e.g. 'Drive'. */
  readonly at: string;
  /** What must keep up there: 'pulse rate'. */
  readonly name: string;
  /** A number that belongs to the step but is not judged, in words. */
  readonly detail?: string;
  /** SI; null while unknown. */
  readonly asked: number | null;
  readonly there: number | null;
  readonly unit: string;
  /** Null while unknown, or when nothing is asked. */
  readonly margin: number | null;
  readonly range?: readonly [low: number, high: number];
  readonly verdict: Verdict;
  readonly finding: string;
}

export interface FlowPicture extends PictureBase {
  readonly kind: 'flow';
  readonly steps: readonly FlowStep[];
}

export type Picture = ChartPicture | FlowPicture;
