import { describe, expect, it } from 'vitest';
import type { File } from '../../language/generated/ast';
import { isRecipe } from '../../language/generated/ast';
import { recipeOf, type UnburntRecipe } from '../../language/lowering/recipe';
import { textFindings } from '../../language/text-findings';
import type { Engrave } from '../../shared/recipe/step';
import { expectMarked } from './marked';
import { open, services } from './services';

const base = `board oak { wood white-oak  thickness 12 mm }
board elm { wood black-walnut  thickness 10 mm }
laser shed { beam co2  power 45 W }
laser big { beam co2  power 90 W }
recipe tray "Tray" {
  make 4
  laser shed
  art heron "art/heron.svg" { width 100 mm }
  blank lid { of oak  size 300 x 200 mm  grain along width  backing tape }
  engrave pocket on lid {
    art heron at 150, 100 mm
    depth 0.5 mm
    power 40 %
    mirror
    allow not-mirrored because "it is alike"
  }
  seal lid with shellac { coats 2 }
  sand lid { flush then 0.1 mm  grits 120, 180 }
  wait 2 h "it dries"
  sand lid { take 0.05 mm  grits 240 }
  wait 1 d
}
`;

/** The last recipe of a text laid under the base, as plain data. */
async function lower(text: string): Promise<UnburntRecipe> {
    const document = await open(base + text);
    return recipeOf((document.parseResult.value as File).entries.filter(isRecipe).at(-1)!, []);
}

const kinds = ({ steps }: UnburntRecipe) => steps.map(({ kind }) => kind).join(' ');

describe('a variant as plain data', () => {
    it('is its base where it says nothing', async () => {
        const variant = await lower('recipe v "V" based on tray { }');
        expect([variant.name, variant.title, variant.make, variant.laser?.name]).toEqual(['v', 'V', 4, 'shed']);
        expect(kinds(variant)).toBe('engrave seal sand wait sand wait');
        expect(variant.blanks).toMatchObject([{ name: 'lid', backing: 'tape', grain: 'width', sheet: { name: 'oak' } }]);
        expect(variant.base).toMatchObject({ name: 'tray' });
    });

    it('changes the places of all lines that name them, on the blank of the base', async () => {
        const places = `recipe many { blank lid { of oak  size 300 x 200 mm }  places slots on lid 3 x 2 every 40 x 30 mm at 90, 60 mm
  engrave tag on lid { circle 5 mm at slots  tone 50 % }  cut edge on lid { circle 9 mm at slots } }
`;
        const laid = async (line: string) =>
            (await lower(`${places}recipe v based on many { ${line} }`)).steps.map((step) => (step as Engrave).placements[0]);
        const grid = (columns: number) => expect.objectContaining({ columns, rows: 2 });
        expect(await laid('')).toMatchObject([{ repeat: grid(3) }, { repeat: grid(3) }]);
        const wider = await laid('places slots 5 x 2 every 40 x 30 mm');
        expect(wider).toMatchObject([{ repeat: grid(5) }, { repeat: grid(5) }]);
        expect(wider[0]?.at).toBeUndefined(); // what is said takes the place of the whole grid
        const list = await laid('places slots at 30, 30 mm and 60, 30 mm');
        expect(list.map((each) => [each?.repeat, each?.places?.points?.length])).toEqual([
            [undefined, 2],
            [undefined, 2],
        ]);
    });

    it('says other things over those of the base, line by line, each with its own place', async () => {
        const text = `recipe v based on tray {
  make 2
  laser big
  art heron { width 150 mm }
  blank lid { size 400 x 300 mm }
  engrave pocket { depth 0.7 mm  mirror }
}`;
        const variant = await lower(text);
        const pocket = variant.steps[0] as Engrave;
        expect([variant.make, variant.laser?.name]).toEqual([2, 'big']);
        expect(variant.arts).toMatchObject([{ path: { value: 'art/heron.svg' }, width: { value: 150 } }]);
        expect(variant.blanks[0]).toMatchObject({ size: { width: { value: 400 } }, sheet: { name: 'oak' }, backing: 'tape' });
        expect(pocket).toMatchObject({ depth: { value: 0.7 }, power: { value: 0.4 }, blank: { value: 'lid' } });
        expect(pocket.mirror).toHaveLength(1);
        const own = base.length;
        const depth = pocket.depth as { where: { offset: number } };
        expect(depth.where.offset).toBe(own + text.indexOf('0.7 mm'));
        expect(pocket.power!.where.offset).toBe(base.indexOf('40 %'));
        expect(pocket.whole.offset).toBe(own + text.indexOf('engrave pocket'));
        expect(variant.steps[1]!.whole.offset).toBe(base.indexOf('seal lid'));
        expect(variant.arts[0]!.path.where.offset).toBe(base.indexOf('"art/heron.svg"'));
    });

    it('leaves out steps and lines, and art that is given takes the place of all that was burnt', async () => {
        const variant = await lower(`recipe v based on tray {
  without seal lid
  without sand lid #2
  without wait "it dries"
  engrave pocket { circle 80 mm  without power  without mirror  without allow not-mirrored }
}`);
        expect(kinds(variant)).toBe('engrave sand wait');
        expect(variant.steps[1]).toMatchObject({ flush: true });
        const pocket = variant.steps[0] as Engrave;
        expect(pocket).toMatchObject({ mirror: [], allows: [], settingsWhere: [], depth: { value: 0.5 } });
        expect(pocket.placements).toMatchObject([{ kind: 'shape' }]);
        expect(pocket.power).toBeUndefined();
    });

    it('puts new steps where they belong, in the order in which they are written', async () => {
        const variant = await lower(`recipe v based on tray {
  before engrave pocket { mask lid  do "one" }
  after sand lid #1 { do "two" }
  after sand lid #1 { do "three" }
  after wait #2 { engrave edge on lid { circle 5 mm  tone 50 % }  check edge { width 5 mm } }
}`);
        const texts = variant.steps.map((step) => (step.kind === 'do' ? step.text : step.kind)).join(' ');
        expect(texts).toBe('mask one engrave seal sand two three wait sand wait engrave check');
        expect(variant.steps.at(-1)).toMatchObject({ kind: 'check', step: { value: 'edge' } });
        expect(variant.steps.map(({ index }) => index)).toEqual(variant.steps.map((_, index) => index));
    });

    it('tells steps that read alike apart by number, and waits by their reason', async () => {
        const variant = await lower(`recipe v based on tray {
  sand lid #2 { grits 320 }
  wait 5 h "it dries"
  wait #2 3 d "it hardens"
}`);
        expect(variant.steps.flatMap((step) => (step.kind === 'sand' ? [step.grits.map(({ name }) => name)] : []))).toEqual([
            ['120', '180'],
            ['320'],
        ]);
        expect(variant.steps.flatMap((step) => (step.kind === 'wait' ? [step.time.value] : []))).toEqual([18000, 259200]);
    });

    it('can stand on a variant, and what that one says counts', async () => {
        const variant = await lower(`recipe middle based on tray { laser big  blank lid { size 400 x 300 mm }  without wait #2 }
recipe v based on middle { blank lid { of elm }  engrave pocket { depth 1 mm } }`);
        expect(variant.laser?.name).toBe('big');
        expect(variant.blanks[0]).toMatchObject({ size: { width: { value: 400 } }, sheet: { name: 'elm' }, backing: 'tape' });
        expect(kinds(variant)).toBe('engrave seal sand wait sand');
        expect(variant.base!.wholes).toHaveLength(2);
    });

    it('sees the art of a base in another folder from there', async () => {
        const far = await open('recipe far { art gull "art/gull.svg"  blank b { } }', 'file:///shop/deep/far.kerf');
        expect(textFindings(far, services).length).toBeGreaterThan(0);
        const document = await open(
            'use "deep/far.kerf"\nrecipe v based on far { art gull { width 5 mm } }',
            'file:///shop/variant-of-far.kerf',
        );
        const variant = recipeOf((document.parseResult.value as File).entries.find(isRecipe)!, []);
        expect(variant.arts).toMatchObject([{ uri: 'file:///shop/deep/art/gull.svg', width: { value: 5 } }]);
        expect(variant.arts[0]!.path.where.uri).toBe('file:///shop/deep/far.kerf');
    });
});

describe('what is said of a variant', () => {
    const lines = base.replace('board elm { wood black-walnut  thickness 10 mm }\n', '');

    it('nothing, where it only says what differs', async () => {
        await expectMarked(`${lines}recipe v based on tray {
  art heron { width 150 mm }
  blank lid { size 400 x 300 mm }
  engrave pocket { depth 0.6 mm }
  seal lid { coats 3 }
}`);
    });

    it('names that the base does not have, with what was meant', async () => {
        const findings = await expectMarked(`${lines}recipe v based on tray {
  engrave poket { depth 0.6 mm }
  ^^^^^^^ not-in-base: Did you mean \`engrave pocket\`?
  without allow thin-floor
  ^^^^^^^^^^^^^^^^^^^^^^^^ not-in-base: no \`allow thin-floor\`
  after wait "it drys" { do "x" }
        ^^^^^^^^^^^^^^ not-in-base: \`wait "it dries"\`
  without sand lid #3
          ^^^^^^^^^^^ not-in-base: no \`sand lid #3\`
}`);
        expect(findings[0]!.fixes[0]!.changes[0]).toMatchObject({ text: 'engrave pocket' });
    });

    it('steps of the base that read alike', async () => {
        await expectMarked(`${lines}recipe v based on tray {
  sand lid { grits 320 }
  ^^^^^^^^ which-step: has 2 steps
  without wait
          ^^^^ which-step: \`#1\` behind it
}`);
    });

    it('what is left out though it is needed', async () => {
        const findings = await expectMarked(`${lines}recipe v based on tray {
  without blank lid
  ^^^^^^^^^^^^^^^^^ left-out-needed: \`engrave pocket\` builds on it
}`);
        expect(findings[0]!.fixes[0]!.changes[0]).toMatchObject({ statement: 'without engrave pocket' });
    });

    it('circles and lines of bases without end', async () => {
        await expectMarked(`recipe a based on b { }
                  ^ based-cycle: leads back
recipe b based on a { }
                  ^ based-cycle: leads back
recipe c based on c { }
                  ^ unknown-name: no recipe called
recipe d based on b { }
                  ^ based-cycle`);
        const many = Array.from({ length: 12 }, (_, i) => `recipe r${i} ${i === 0 ? '' : `based on r${i - 1} `}{ }`).join('\n');
        const said = textFindings(await open(many), services).filter(({ rule }) => rule === 'based-cycle');
        expect(said).toHaveLength(3);
    });

    it('words of a variant in a recipe that is none', async () => {
        await expectMarked(
            `board oak { wood white-oak  thickness 12 mm }
recipe r {
  art a
      ^ missing-property: which file
  blank b { of oak  size 30 x 20 mm }
  without seal b
  ^^^^^^^ no-base: based on another
  seal b
  ^^^^ missing-property: with what
  peel b #1
         ^^ no-base
  engrave e { art a  depth 1 mm  without power }
          ^ missing-property: on which blank
                                 ^^^^^^^ no-base
}`.replace('recipe r {', 'laser l { beam co2  power 9 W }\nrecipe r {\n  laser l'),
        );
    });

    it('a brace missing in a block that is put in spoils nothing else', async () => {
        const document = await open(`${base}recipe v based on tray {
  after wait #2 {
    do "x"
  without seal lid
  make 9
}`);
        const variant = recipeOf((document.parseResult.value as File).entries.filter(isRecipe).at(-1)!, []);
        expect([variant.make, kinds(variant)]).toEqual([9, 'engrave sand wait sand wait do']);
    });
});
