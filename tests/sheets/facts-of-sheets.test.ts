import { describe, expect, it } from 'vitest';
import { Memo } from '../../shared/plan/memo';
import { momentOf } from '../../shared/quantity/calendar';
import { showTime } from '../../shared/quantity/show';
import { buildSheets } from '../../shared/sheets/build-sheets';
import { planOf } from '../kit/plan-of';
import { inlayRecipe, shop } from '../kit/shop';

async function sheetsOf(text: string, start?: number) {
    const plan = await planOf(text);
    const { files } = buildSheets(plan, [], new Memo(), start);
    const file = (ending: string): string => files.find(({ path }) => path.endsWith(ending))?.text ?? '';
    return {
        plan,
        sheet: file('job-sheet.html'),
        machine: file('.ngc'),
        drawing: file('.svg'),
        json: JSON.parse(file('plan.json')),
    };
}

const plate = (head: string, title = '"Door plate"') => `${shop}
recipe plate ${title} { revision 1 ${head} laser shed  blank b { of walnut-12 size 90 x 60 mm }
  engrave well on b { rectangle 40 x 30 mm  depth 0.5 mm }
  wait 12 h }`;

describe('the job sheet', () => {
    it('tells how long a day is only where the shop says it', async () => {
        const days = await sheetsOf(`shop here { workday 8 h }\n${plate('make 3')}`);
        expect(days.sheet).toContain('working 8 h a day');
        const always = await sheetsOf(plate('make 3'));
        expect(always.sheet).toContain('Ready after');
        expect(always.sheet).not.toContain('a day:');
    });

    it('counts the pieces of a job where there are several, and not of a single one', async () => {
        expect((await sheetsOf(plate('make 3'))).sheet).toMatch(/Engrave well, 3 pieces: /);
        expect((await sheetsOf(plate('make 1'))).sheet).toMatch(/Engrave well: /);
    });

    it('says of each step on the laser what the machine takes, and of no other', async () => {
        const { plan, sheet } = await sheetsOf(plate('make 1'));
        const [well, wait] = plan.steps;
        expect(well!.times.machine).toBeGreaterThan(60);
        expect(wait!.times.machine).toBe(0);
        const told = [...sheet.matchAll(/machine<\/\w+>\s*<\w+>([^<]+)</g)].map(([, time]) => time);
        expect(told).toEqual([showTime(well!.times.machine)]);
    });

    it('gives what the maker noted of each thing that is used, the glue too', async () => {
        const text = inlayRecipe({ inlay: 'clearance 0.15 mm glue bench-glue' });
        const { sheet } = await sheetsOf(`/// Stir before use.\nglue bench-glue { kind wood-glue }\n${text}`);
        expect(sheet).toContain('bench-glue: Stir before use.');
    });
});

describe('the plan as data', () => {
    it('has a start only where the maker gave one', async () => {
        expect((await sheetsOf(plate('make 1'))).json).not.toHaveProperty('start');
        const { json } = await sheetsOf(plate('make 1'), momentOf('2026-12-01T08:00'));
        expect(JSON.stringify(json)).toContain('2026-12-01T08:00');
    });

    it('holds how an inlay will lie, and of the places at which one stops the first ten', async () => {
        const { plan, json } = await sheetsOf(
            inlayRecipe({ relief: 'art flag inverse within grown 6 mm depth through air off' }),
        );
        const index = plan.steps.findIndex(({ inlay }) => inlay !== undefined);
        const { inlay, press } = json.steps[index];
        expect(inlay.stack).toEqual(JSON.parse(JSON.stringify(plan.steps[index]!.inlay!.stack)));
        expect(press.stops.length).toBe(10);
    });
});

describe('the machine file', () => {
    it('bears the title of its recipe, or its name where it has none', async () => {
        expect((await sheetsOf(plate('make 1'))).machine).toContain('Door plate, issue 1, set-up 1');
        expect((await sheetsOf(plate('make 1', ''))).machine).toContain('plate, issue 1, set-up 1');
    });
});

describe('the drawing for a set-up', () => {
    it('says how the marks of an inlay are burnt', async () => {
        const { plan, drawing } = await sheetsOf(inlayRecipe({ inlay: 'clearance 0.15 mm glue wood-glue marks 3' }));
        const [marks] = plan.steps[0]!.laser!.marks!;
        expect(marks!.settings).toBeDefined();
        expect(drawing).toMatch(/marks of pocket, [a-z ]+: \d+ %/);
    });
});
