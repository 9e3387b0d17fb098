import { beforeAll, expect, it } from 'vitest';
import { allLines } from '../../language/vocabulary/lookup';
import type { Property } from '../../language/vocabulary/property';
import { Memo } from '../../shared/plan/memo';
import { buildSheets } from '../../shared/sheets/build-sheets';
import { planOf } from '../kit/plan-of';
import { coupon } from '../kit/shop';

/** A recipe with a place for one more line in each block that has a value of its own where nothing is written. */
const text = `
shop works { currency EUR  hourly 30  /*Shop*/ }
laser shed { beam co2  power 45 W  spot 0.15 mm  field 600 x 400 mm  /*Laser*/ }
wood pale { density 600 kg/m3  radial 0.19 %  tangential 0.27 %  pores ring  /*Wood*/ }
board plank { wood pale  thickness 12 mm +- 0.3 mm  moisture 8 %  price 40 for 1 sheet  sheet 600 x 300 mm }
veneer leaf { wood sugar-maple  thickness 0.6 mm +- 0.02 mm  moisture 8 % }
${coupon('plank', 'shed')}
resin blue { kind slow-epoxy  colour #1f6f8b  price 40 for 1 kg }
recipe plate "Plate" {
  laser shed  /*Recipe*/
  art flag "flag.svg" { /*Art*/ }
  art diamond "diamond.svg"
  blank lid { of plank  size 200 x 150 mm  grain along width  /*Blank*/ }
  blank bird { of leaf  size 80 x 70 mm  grain along width  backing foil }
  engrave pocket on lid { art flag at 60, 60 mm  depth 0.55 mm  /*Engrave*/ }
  engrave hollow on lid { art diamond at 150, 60 mm  depth 1 mm }
  engrave relief on bird { art flag inverse within grown 6 mm  mirror  depth through }
  cut rim on lid { circle 140 mm  /*Cut*/ }
  seal lid with shellac { /*Seal*/ }
  wait 2 h
  inlay relief into pocket { glue wood-glue  /*Inlay*/ }
  fill hollow with blue { /*Fill*/ }
  wait 24 h
  sand lid { flush  grits 120, 180, 240  /*Sand*/ }
  finish lid with drying-oil { /*Finish*/ }
}`;

/** `issue` is left out: the number stands on every sheet, and `1` is not said where none is written. */
const values = allLines.filter(
    ({ otherwise, choices, block, key }) =>
        (/^\d/.test(otherwise) || choices.includes(otherwise) || otherwise === 'off') &&
        text.includes(`/*${block}*/`) &&
        `${block}.${key}` !== 'Recipe.issue',
);
const lineOf = ({ words, otherwise }: Property): string => (otherwise === 'off' ? `without ${words}` : `${words} ${otherwise}`);

async function sheetsOf(written: string): Promise<ReadonlyMap<string, string>> {
    const { files, problems } = buildSheets(await planOf(written), [], new Memo());
    expect(problems).toEqual([]);
    // The plan's data say that no top speed was written, the job sheet that no clearance is wanted.
    return new Map(
        files.map(({ path, text: content }) => [
            path,
            content.replaceAll(/"limits": \[[^\]]*\]|<dt>clearance<\/dt><dd>0 mm<\/dd>/g, ''),
        ]),
    );
}

/** Of the text without the line, worked out once. */
let without: Promise<ReadonlyMap<string, string>>;
beforeAll(() => {
    without = sheetsOf(text);
});

it('there are such values', () => {
    expect(values.map(lineOf)).toEqual(
        expect.arrayContaining([
            'make 1',
            'top speed 300 mm/s',
            'without air',
            'air on',
            'scan across grain',
            'coats 1',
            'overfill 10 %',
        ]),
    );
});

it.each(values.map((each) => [`${each.block}: ${lineOf(each)}`, each] as const))(
    'what the reference says of a line that is left out holds: %s',
    async (_name, each) => {
        const written = text.replace(`/*${each.block}*/`, lineOf(each));
        expect(await sheetsOf(written)).toEqual(await without);
    },
);
