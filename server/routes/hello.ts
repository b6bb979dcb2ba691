/** Who answers here. */
import type { Hello } from '../../engine/refit/wire.ts';
import { json } from '../answer.ts';
import type { Context } from '../context.ts';
import type { Route } from '../http.ts';

export const helloRoutes = ({ store, version, dataFolderName, samples }: Context): Route[] => [
  {
    method: 'GET',
    path: '/api/hello',
    handle: () => {
      const there = samples.filter((id) => store.openRefit(id).ok);
      return json(200, { version, dataFolderName, samples: there } satisfies Hello);
    },
  },
];
