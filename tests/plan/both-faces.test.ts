import { describe, expect, it } from 'vitest';
import { area, bounds } from '../../shared/geometry/measure';
import { Memo } from '../../shared/plan/memo';
import type { Plan } from '../../shared/plan/plan';
import { setUps } from '../../shared/plan/set-ups';
import { buildSheets } from '../../shared/sheets/build-sheets';
import { planJson } from '../../shared/sheets/plan-json';
import { columnWords } from '../../shared/view/column-words';
import { makeBenchView } from '../../shared/view/make-bench-view';
import { planOf } from '../kit/plan-of';
import { shop } from '../kit/shop';

const recipe = (steps: string, blank = 'size 100 x 80 mm') => `${shop}
recipe slab "Slab" { revision 1 laser shed
  art flag "flag.svg"
  blank slab { of ash-10 ${blank} grain along width }
  ${steps} }`;

const pocket = (name: string, x: number, y: number) =>
    `engrave ${name} on slab { rectangle 20 x 10 mm at ${x}, ${y} mm depth 0.5 mm }`;
const rim = 'cut rim on slab { rectangle 60 x 40 mm at 40, 30 mm power 90 % speed 5 mm/s air on }';

const tones = `coupon ash-10 on shed { pitch 0.10 mm burn 10 % at 600 mm/s gives tone 40 %
  burn 14 % at 600 mm/s gives tone 66 % burn 12 % at 450 mm/s gives tone 76 % }`;

function lastFace(plan: Plan) {
    return plan.faces.at(-1)![0]!;
}

describe('a piece that is worked on both faces', () => {
    it('has a file for each set-up, which says the face, and art that lies as it is read from there', async () => {
        const plan = await planOf(
            recipe('engrave a on slab { art flag depth 0.5 mm } flip slab engrave b on slab { art flag depth 0.5 mm }'),
        );
        expect(setUps(plan).map(({ side, lasers }) => [side, lasers.map(({ step }) => step.name)])).toEqual([
            ['front', ['a']],
            ['back', ['b']],
        ]);
        // The pole of the flag is on the left for whoever looks at the face that is up: nothing is mirrored on the way.
        expect(plan.steps[2]!.laser!.region).toEqual(plan.steps[0]!.laser!.region);
        const { files } = buildSheets(plan, [], new Memo());
        const names = files.map(({ path }) => path);
        expect(names).toEqual(
            expect.arrayContaining([
                'setup-1-slab-front.svg',
                'setup-1-slab-front.ngc',
                'setup-2-slab-back.svg',
                'setup-2-slab-back.ngc',
            ]),
        );
        const text = (name: string): string => files.find(({ path }) => path === name)!.text;
        expect(text('setup-2-slab-back.ngc')).toContain('its back up');
        expect(text('setup-2-slab-back.svg')).toContain('set-up 2: the back of slab');
        expect(text('job-sheet.html')).toContain('on the back of slab');
        expect(text('job-sheet.html')).toContain('<dt>face</dt><dd>back</dd>');
        expect(text('job-sheet.html')).toMatch(/<text [^>]*>BACK UP<\/text>.*<text [^>]*>100 × 80 mm<\/text>/);
    });

    it('tells of its set-ups in the plan: what lies there, with which face up, and what ends it', async () => {
        const plan = await planOf(
            recipe(
                `${pocket('a', 25, 20)} do "look" check a { depth 0.5 mm } ${pocket('b', 60, 20)} do "weigh it" { taken off } ${pocket('c', 60, 50)}
                 flip slab ${pocket('d', 25, 20)} engrave e on other { circle 5 mm depth 0.5 mm } ${pocket('f', 60, 20)} sand slab { take 0.1 mm }`,
                'size 100 x 80 mm grain along width } blank other { of ash-10 size 40 x 40 mm',
            ),
        );
        const { setUps: told } = planJson(plan, []) as {
            setUps: {
                blank: string;
                face: string;
                steps: number[];
                files: string[];
                ends: string;
                before: number;
                foundBy: string;
            }[];
        };
        expect(told.map(({ blank, face, steps, ends, before }) => [blank, face, steps, ends, before])).toEqual([
            ['slab', 'front', [0, 3], 'weigh it (step 5)', null],
            ['slab', 'front', [5], 'slab is turned over (step 7)', 1],
            ['slab', 'back', [7], 'other is laid on the bed (step 9)', 2],
            ['other', 'front', [8], 'slab is laid on the bed (step 10)', null],
            ['slab', 'back', [9], 'Sand slab (step 11)', 3],
        ]);
        expect(told.map(({ foundBy }) => foundBy)).toEqual([null, null, null, null, null]);
        expect(told[2]!.files).toEqual(['setup-3-slab-back.svg', 'setup-3-slab-back.ngc']);
        const { steps } = makeBenchView(plan, [], { uri: 'file:///a.kerf', textVersion: 1, recipes: [] }, new Memo());
        expect(steps[5]!.facts).toContainEqual({
            label: 'set-up',
            value: '2, the front of slab, until slab is turned over (step 7)',
        });
        const sheet = buildSheets(plan, [], new Memo()).files.find(({ path }) => path === 'job-sheet.html')!;
        expect(sheet.text).toContain('It ends when: slab is turned over (step 7).');
    });

    it('tells how a blank finds its place again', async () => {
        const plan = await planOf(
            recipe(
                `${pocket('a', 25, 20)} flip slab do "push it against the stop" ${pocket('b', 25, 20)} sand slab { take 0.1 mm } ${pocket('c', 60, 20)}`,
            ),
        );
        expect(setUps(plan).map(({ before, foundBy }) => [before, foundBy])).toEqual([
            [undefined, undefined],
            [1, 'push it against the stop'],
            [2, undefined],
        ]);
        const sheet = buildSheets(plan, [], new Memo()).files.find(({ path }) => path === 'job-sheet.html')!.text;
        expect(sheet).toContain('slab lay there in set-up 1 before: push it against the stop.');
        expect(sheet).toContain('slab lay there in set-up 2 before: nothing in the recipe says how it finds its place.');
    });

    it('says by what it is found, how exactly, and what has to stay until then', async () => {
        const said = 'circle 4 mm at 5, 30 mm air off depth 1 mm';
        const plan = await planOf(
            recipe(
                `engrave crosses on slab { ${said} } do "meet the cross" { found by marks of crosses } ${pocket('b', 25, 20)} flip slab { found by pins within 0.05 mm } ${pocket('c', 60, 20)}
                 do "meet it" { found by fence } ${pocket('d', 60, 40)}`,
            ),
        );
        expect(setUps(plan).map(({ place }) => place && [place.by, place.exact, place.from, place.mark?.step.name])).toEqual([
            undefined,
            ['marks', 0.3, 'practice', 'crosses'],
            ['pins', 0.05, 'maker', undefined],
            ['fence', 0.2, 'practice', undefined],
        ]);
        expect(setUps(plan).map(({ keeps }) => keeps)).toEqual([[{ step: 'crosses', until: 2 }], [], [], []]);
        const files = buildSheets(plan, [], new Memo()).files;
        const sheet = files.find(({ path }) => path === 'job-sheet.html')!.text;
        expect(sheet).toContain('crosses has to stay as it is until set-up 2 is laid down');
        expect(sheet).toContain('meet the cross: by the marks of crosses, to within 0.3 mm (common practice).');
        const json = JSON.parse(files.find(({ path }) => path === 'plan.json')!.text) as { setUps: { place: unknown }[] };
        expect(json.setUps.map(({ place }) => place)).toEqual([
            null,
            { by: 'marks', step: 0, within: 0.3, from: 'practice' },
            { by: 'pins', step: null, within: 0.05, from: 'maker' },
            { by: 'fence', step: null, within: 0.2, from: 'practice' },
        ]);
    });

    it('lies in a frame as exactly as its kerf is wide', async () => {
        const plan = await planOf(
            recipe(
                `${pocket('a', 25, 20)} cut rim on slab { rectangle 60 x 40 mm tabs 3 kerf 0.24 mm } do "break the tabs" flip slab { found by frame of rim } ${pocket('b', 25, 20)}`,
            ),
        );
        expect(setUps(plan).at(-1)?.place).toMatchObject({ by: 'frame', exact: 0.24, from: 'kerf' });
    });

    it('keeps its old file names where nothing is turned over', async () => {
        const { files } = buildSheets(await planOf(recipe(pocket('a', 30, 40))), [], new Memo());
        expect(files[0]!.path).toBe('setup-1-slab.svg');
    });

    it.each([
        ['flip slab', 75, 20],
        ['flip slab { about level }', 25, 60],
    ])('%s: a pocket of the front lies under that place of the back, and leaves less there', async (flip, x, y) => {
        const plan = await planOf(recipe(`${pocket('a', 25, 20)} ${flip} ${pocket('b', x, y)}`));
        const both = lastFace(plan).cells.filter(({ column }) => column.digs.length > 0 && column.below!.digs.length > 0);
        expect(both).toHaveLength(1);
        expect(area(both[0]!.region)).toBeCloseTo(200, 3);
        const [wood] = both[0]!.column.layers;
        // 10 ± 0.2 mm less both pockets, each at its bad end.
        const [a, b] = [plan.steps[0]!.laser!.depth!, plan.steps[2]!.laser!.depth!];
        expect(wood!.down.value - both[0]!.column.top.value).toBeCloseTo(10 - a.value - b.value, 9);
        expect(wood!.down.low - both[0]!.column.top.high).toBeCloseTo(9.8 - a.high - b.high, 9);
    });

    it('is as it was when it is turned back about the same line, to the last digit of its spreads', async () => {
        const once = lastFace(await planOf(recipe(pocket('a', 25, 20))));
        const back = lastFace(await planOf(recipe(`${pocket('a', 25, 20)} flip slab flip slab`)));
        expect(back.cells[0]!.column).toMatchObject({
            top: once.cells[0]!.column.top,
            layers: [{ down: once.bare.layers[0]!.down }],
            digs: once.cells[0]!.column.digs,
        });
        expect(bounds(back.cells[0]!.region)).toEqual(bounds(once.cells[0]!.region));
    });

    it('is cut free on both faces: the part lies where it is seen from the back', async () => {
        const plan = await planOf(recipe(`${pocket('a', 40, 30)} ${rim} flip slab`));
        const { body, freed } = lastFace(plan);
        expect(freed).toBe(true);
        expect(bounds(body.region)).toEqual({ minX: 30, minY: 10, maxX: 90, maxY: 50 });
    });

    it('knows that what a cut from the back encloses is the piece that carries the front’s work', async () => {
        const plan = await planOf(recipe(`${pocket('a', 60, 30)} flip slab ${rim}`));
        const { body, freed } = lastFace(plan);
        expect(freed).toBe(true);
        expect(area(body.region)).toBeCloseTo(2400, 1);
    });

    it('without a size each face is kept by itself, and comes back as it was', async () => {
        const plan = await planOf(recipe(`${pocket('a', 25, 20)} flip slab ${pocket('b', 25, 20)} flip slab`, ''));
        expect(plan.faces[2]![0]!.cells).toEqual([]);
        expect(lastFace(plan).cells).toEqual(plan.faces[1]![0]!.cells);
    });

    it('burns through tape only where it lies on the face that is up', async () => {
        const tone = 'engrave b on slab { art flag tone 60 % }';
        const taped = async (steps: string) => {
            const plan = await planOf(recipe(steps).replace('recipe slab', `${tones} recipe slab`));
            return plan.steps.at(-1)!.laser!.settings!.throughTape ?? false;
        };
        expect(await taped(`mask slab ${tone}`)).toBe(true);
        expect(await taped(`mask slab flip slab ${tone}`)).toBe(false);
        expect(await taped(`mask slab flip slab peel slab flip slab ${tone}`)).toBe(true);
    });

    it('says of a place what was dug from the other face', async () => {
        const plan = await planOf(recipe(`${pocket('a', 25, 20)} flip slab ${pocket('b', 75, 20)}`));
        expect(columnWords(plan, 3, 'slab', 75, 20)).toMatch(/dug by b; dug from the other face by a\.$/);
        expect(columnWords(plan, 2, 'slab', 75, 20)).toBe('From the top: 9.5 mm ash-10; dug from the other face by a.');
    });

    it('says in the bench view which face is up', async () => {
        const plan = await planOf(recipe(`${pocket('a', 25, 20)} flip slab ${pocket('b', 25, 20)}`));
        const { frames } = makeBenchView(plan, [], { uri: 'file:///a.kerf', textVersion: 1, recipes: [] }, new Memo());
        expect(frames.map(({ pieces }) => pieces[0]!.side)).toEqual(['front', 'front', 'back', 'back']);
        // What was burnt into the front is not seen on the back.
        expect(frames.map(({ pieces }) => pieces[0]!.layers.map(({ label }) => label))).toEqual([
            [],
            ['Engrave a'],
            [],
            ['Engrave b'],
        ]);
    });
});
