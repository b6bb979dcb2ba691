import { screwLead } from '../screw-lead.ts';
import { screwSpeed } from '../screw-speed.ts';
import { holds } from './expect.ts';

holds('derived', 'four starts of 2 mm make 8 mm of lead', 'ISO 3408-1: lead is pitch times starts', {
  sheet: screwLead,
  given: { P: '2 mm', z: '4', dm: '25.5 mm' },
  expected: { Ph: '8.0000000 mm' },
});

holds('derived', 'lead angle of a 25.5 mm ball circle with 5 mm lead', 'one turn unrolled', {
  sheet: screwLead,
  given: { P: '5 mm', z: '1', dm: '25.5 mm' },
  expected: { beta: '3.571409 °' },
});

holds('derived', '8 mm of lead at 600 r/min is 0.08 m/s, and back', 'definition of the lead', {
  sheet: screwSpeed,
  given: { Ph: '8 mm', n: '600 r/min', v_set: '0.08 m/s' },
  expected: { v: '0.0800000000 m/s', n_set: '600.0000000 r/min' },
});
