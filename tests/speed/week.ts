/** The week of a shop with thirty orders: planning all of it in one book, the recipes being worked out already. */
import { Memo } from '../../shared/plan/memo';
import type { Plan } from '../../shared/plan/plan';
import { momentOf } from '../../shared/quantity/calendar';
import { makeWeek } from '../../shared/week/make-week';
import { planOf } from '../kit/plan-of';
import { flag } from '../kit/shop';
import { median, report } from './measure';

const recipe = (index: number): string => `
shop slip { currency EUR hourly 30 workday 8 h }
laser shed { beam co2  power 45 W  spot 0.15 mm  field 600 x 400 mm  top speed 600 mm/s  acceleration 6000 mm/s2 }
laser loft { beam co2  power 45 W  spot 0.15 mm  field 600 x 400 mm  top speed 600 mm/s  acceleration 6000 mm/s2 }
board ash-${index % 3} { wood white-ash  thickness 10 mm  moisture 8 %  sheet 1000 x 200 mm  price 10 for 1 sheet }
resin tide-blue { kind slow-epoxy  colour #1f6f8b }
finish oil { kind drying-oil dry 24 h price 20 for 500 g }
recipe r${index} "r${index}" {
  make ${2 + (index % 7)} laser ${index % 3 === 0 ? 'loft' : 'shed'}
  art flag "flag.svg"
  blank board { of ash-${index % 3} size ${90 + ((index * 37) % 120)} x ${80 + ((index * 53) % 90)} mm grain along width }
  engrave mark on board { art flag power 60 % speed ${200 + 10 * index} mm/s passes 2 air off }
  seal board with shellac { coats 2 }
  wait 2 h
  fill mark with tide-blue
  wait 24 h
  sand board { flush then 0.1 mm grits 120, 180 }
  finish board with oil { coats 2 }
  wait 24 h
}`;

const plans: Plan[] = [];
for (let index = 0; index < 30; index++) plans.push(await planOf(recipe(index), { 'flag.svg': flag }));
const pieces = plans.reduce((sum, plan) => sum + plan.recipe.make, 0);
const entries = plans.map((plan, index) =>
    index % 2 === 0 ? { plan, due: `2026-12-${String(10 + index / 2).padStart(2, '0')}` } : { plan },
);
const asked = { start: momentOf('2026-12-01T08:00')!, makers: 1, closed: [0, 6], stock: [] };
const taken = median(() => makeWeek(entries, asked, [], new Memo()));
const { gap, cuttings } = makeWeek(entries, asked, [], new Memo());
const blanks = cuttings.reduce((sum, { yielded }) => sum + yielded.layout.flat().length, 0);
report(
    `30 orders, ${pieces} pieces, in one book`,
    taken,
    `${(100 * gap).toFixed(1)} % above the bound at most`,
    `${blanks} blanks laid on ${cuttings.length} kinds of sheet`,
    'bar 2000 ms',
);
if (taken > 2000) process.exitCode = 1;
