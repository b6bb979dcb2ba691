/** A touch probe on an input of the control, where the job wants one. */
import { PROBE_OUTPUTS } from '../kinds/probe.ts';
import type { Build } from './build.ts';
import { feedSensor, joinContact, joinSensor } from './tellers.ts';
import { isWished, NOT_WISHED, type Wished } from './wanted.ts';
import type { Control } from './ways-in.ts';

export function proposeProbe(build: Build, control: Control): Wished {
  const known = [...build.devices.values()].find(({ kind }) => kind === 'probe');
  if (!known && !isWished(build.refit, 'probing')) return NOT_WISHED;
  const own = known?.id ?? build.named('B', 'probe', 'Touch probe', { where: 'machine' });
  const output = build.devices.get(own)!.settings.output;
  if (!PROBE_OUTPUTS.some((each) => each === output))
    return {
      questions: [
        {
          id: `${own}.output`,
          asks: `${own} (touch probe): what does it give? A plain probe is a contact that opens at the touch; one with electronics gives plus (PNP) or pulls to minus (NPN).`,
          place: { of: 'device', id: own, setting: 'output' },
          options: PROBE_OUTPUTS,
        },
      ],
      left: [],
    };
  const isContact = build.has(`${own}.1`);
  const isDone = build.taken(isContact ? `${own}.2` : `${own}.BK`);
  const input = control.freeInputs()[0];
  if (!isDone && !input)
    return {
      questions: [],
      left: [`The touch probe is left out: no input of ${control.id} is free.`],
    };
  const cable = build.cable('WP', 'Touch probe', {
    cores: isContact ? '2' : '3',
    section: '0.25 mm²',
    shield: 'none',
    route: 'signals',
    laid: 'moved',
  });
  if (!isContact) feedSensor(build, control, own, cable);
  if (isDone) return NOT_WISHED;
  if (isContact) joinContact(build, control, [`${own}.1`, `${own}.2`], input!, cable);
  else joinSensor(build, control, own, input!, cable);
  return NOT_WISHED;
}
