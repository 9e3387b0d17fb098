/** How grave a finding may be that rests on the built-in stock: as grave as what is known of the figure. */
import { describe, expect, it } from 'vitest';
import { builtInText, builtInUris } from '../../language/built-in';
import { gradeInFindings, stockLines } from '../../language/stock-sources';
import { examine } from '../../shared/rules/examine';
import { planOf } from '../kit/plan-of';
import { shop } from '../kit/shop';

/** What is said of one coat over another after a day. */
async function over(first: string, second: string, stock = '', between = 'wait 24 h') {
    const plan = await planOf(`${shop}
${stock}
recipe board "Board" {
  issue 1 make 1 laser shed
  blank board { of ash-10 size 200 x 200 mm grain along width }
  finish board with ${first}
  ${between}
  finish board with ${second}
}`);
    return examine(plan).filter(({ rule }) => rule === 'does-not-hold');
}

describe('a finding that rests on the built-in stock', () => {
    it('warns where a source was read', async () => {
        const [told] = await over('wax', 'oil-varnish');
        expect(told).toMatchObject({ severity: 'warning', message: expect.not.stringMatching(/checked|disagree/) });
    });
    it('is a hint where none was, says so, and where the line stands', async () => {
        const [told] = await over('mineral-oil', 'oil-varnish');
        expect(told).toMatchObject({
            severity: 'hint',
            message: expect.stringMatching(/ Not checked: no source was read for it\.$/),
        });
        const { uri, offset, length } = told!.related.at(-1)!.where;
        expect(builtInText(uri)!.slice(offset, offset + length)).toBe('over mineral-oil never');
    });
    it('warns at the stricter where sources disagree, and says so', async () => {
        const [told] = await over('drying-oil', 'water-varnish');
        expect(told).toMatchObject({
            severity: 'warning',
            message: expect.stringMatching(/after 7 d\. Sources disagree; this goes by the stricter\.$/),
        });
    });
    it('counts in full by what a maker has written', async () => {
        const own = 'finish shed-varnish { kind oil-varnish over mineral-oil never }';
        const [told] = await over('mineral-oil', 'shed-varnish', own);
        expect(told).toMatchObject({ severity: 'warning', message: expect.not.stringMatching(/checked/) });
    });
});

describe('movement', () => {
    it.each([
        ['black-walnut', 'warning'],
        ['mahogany', 'hint'], // whose coefficients nobody has read
    ])('of maple across %s', async (wood, severity) => {
        const plan = await planOf(`${shop}
board ground { wood ${wood} thickness 12 mm moisture 8 % }
recipe board "Board" {
  issue 1 make 1 laser shed
  blank board { of ground size 200 x 200 mm grain along width }
  blank pale { of maple-06 size 190 x 190 mm grain along height backing foil }
  engrave bed on board { rectangle 140 x 140 mm depth 0.55 mm }
  engrave lid on pale { rectangle 140 x 140 mm mirror depth through }
  inlay lid into bed { clearance 0.15 mm glue wood-glue }
}`);
        const [told] = examine(plan).filter(({ rule }) => rule === 'movement-across-inlay');
        expect(told?.severity).toBe(severity);
    });
});

describe('the lines of the built-in stock', () => {
    const lines = stockLines(builtInUris.map((uri) => ({ path: uri, text: builtInText(uri)! })));
    const compatible = lines.filter(({ line }) => line.startsWith('over '));
    it.each(compatible.map((each) => [`${each.of}: ${each.line}`, each] as const))('%s', async (_, each) => {
        const grade = gradeInFindings(each);
        const plan = await planOf(`${shop}
recipe board "Board" {
  issue 1 make 1 laser shed
  blank board { of ash-10 size 200 x 200 mm grain along width }
  ${step(each.of)}
}`);
        const laid = plan.steps.at(-1)!.step;
        const name = each.line.split(' ')[1];
        const said = overOf(laid).find(({ under }) => under === name);
        expect(said?.where.grade).toBe(grade);
    });
});

function step(of: string): string {
    const [kind, name] = of.split(' ');
    if (kind === 'finish') return `finish board with ${name}`;
    if (kind === 'sealer') return `seal board with ${name}`;
    if (kind === 'masking') return `mask board with ${name}`;
    const pocket = 'engrave hollow on board { rectangle 20 x 20 mm depth 1 mm }';
    if (kind === 'resin') return `${pocket}\n  fill hollow with ${name}`;
    return `${pocket}\n  engrave half on board { rectangle 20 x 20 mm depth 1 mm inverse of hollow }\n  inlay half into hollow { glue ${name} }`;
}

function overOf(laid: object): readonly { under: string; where: { grade?: string } }[] {
    const { coat, sealer, resin, glue, film } = laid as Record<string, { over: [] } | undefined>;
    return (coat ?? sealer ?? resin ?? glue ?? film)?.over ?? [];
}
