/** What moves: its numbers, typed here or brought from the rest of the refit. */
import { MOTION_SETTINGS, type Model } from '../../../engine/circuit/stop/index.ts';
import type { EditProps } from './edit.tsx';
import { Settings } from './settings-form.tsx';

export function Moves({ circuit, record, model }: EditProps & { readonly model: Model | undefined }) {
  return (
    <>
      <h3>What moves</h3>
      {Object.values(circuit.motions).map((motion) => (
        <details key={motion.id} className="stop-element">
          <summary>{motion.name}</summary>
          <Settings
            specs={MOTION_SETTINGS[motion.kind]}
            values={motion.settings}
            of={motion.id}
            rows={model?.motions.find(({ id }) => id === motion.id)?.numbers.rows}
            set={(settings) =>
              record({ ...circuit, motions: { ...circuit.motions, [motion.id]: { ...motion, settings } } })
            }
          />
        </details>
      ))}
    </>
  );
}
