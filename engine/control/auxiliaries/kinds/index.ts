/** Every kind of auxiliary. Add one: its file and one line here. */
import type { AuxiliaryKind } from '../kind.ts';
import { chuck } from './chuck.ts';
import { coolant } from './coolant.ts';
import { door } from './door.ts';
import { drawbar } from './drawbar.ts';
import { gearShift } from './gear-shift.ts';
import { lubrication } from './lubrication.ts';
import { tailstock } from './tailstock.ts';
import { turret } from './turret.ts';

export const KINDS: readonly AuxiliaryKind[] = [
  turret,
  chuck,
  tailstock,
  gearShift,
  drawbar,
  door,
  lubrication,
  coolant,
];

export const kindOf = (id: string): AuxiliaryKind | undefined => KINDS.find((each) => each.id === id);
