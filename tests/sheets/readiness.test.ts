/** From when on fills may be sanded and pieces packed, shipped, used and laid under food; times from the stock, by hand from the start of the run. */
import { describe, expect, it } from 'vitest';
import { readiness } from '../../shared/sheets/readiness';
import { planOf } from '../kit/plan-of';
import { shop } from '../kit/shop';

const day = 86_400;

async function told(steps: string, blank = '', stock = '', cure = '14 d') {
    const plan = await planOf(`${shop}
finish hard-oil { kind drying-oil cure ${cure} ${stock} }
recipe board "Board" {
  issue 1 make 1 laser shed
  blank board { of ash-10 size 200 x 200 mm grain along width ${blank} }
  engrave hollow on board { rectangle 20 x 20 mm depth 1 mm }
  ${steps}
}`);
    const { ready, spans } = plan.schedule;
    return { ready, spans, lines: readiness(plan) };
}

describe('not before', () => {
    it('is a finish packed two days after it, and shipped and used once it has cured', async () => {
        const { ready, lines } = await told('finish board with hard-oil wait 1 d');
        expect(lines).toEqual([
            { what: 'To be packed in plain paper', from: ready + day, why: 'hard-oil takes nothing on it before 2 d' },
            { what: 'To be shipped', from: ready + 13 * day, why: 'hard-oil cures for 14 d' },
            { what: 'To be used', from: ready + 13 * day, why: 'hard-oil cures for 14 d' },
        ]);
    });
    it('counts by the longer end of a cure', async () => {
        const { ready, lines } = await told('finish board with hard-oil wait 1 d', '', '', '14 d +- 2 d');
        expect(lines.at(-1)).toEqual({ what: 'To be used', from: ready + 15 * day, why: 'hard-oil cures for 16 d' });
    });
    it('are they any later once all of it was waited out', async () => {
        const { ready, lines } = await told('finish board with hard-oil wait 20 d');
        expect(lines.map(({ what, from }) => [what, from])).toEqual([
            ['To be shipped', ready],
            ['To be used', ready],
        ]);
    });
    it('is a fill sanded, by its cure from the hour in which it is poured', async () => {
        const { spans, lines } = await told(
            'seal board with shellac wait 2 h fill hollow with slow-epoxy wait 36 h sand board { flush then 0.1 mm grits 120, 180 }',
        );
        const poured = spans.find(({ step }) => step === 3)!.end;
        expect(lines[0]).toEqual({ what: 'To sand over hollow', from: poured + day, why: 'slow-epoxy needs 1 d' });
    });
    it('does food touch it, once it has cured, where somebody’s word stands for it', async () => {
        const sworn = await told('finish board with hard-oil wait 1 d', 'touched by food', 'food "the maker’s sheet"');
        expect(sworn.lines.at(-1)).toEqual({
            what: 'To touch food',
            from: sworn.ready + 13 * day,
            why: 'hard-oil cures for 14 d',
        });
        const silent = await told('finish board with hard-oil wait 20 d', 'touched by food');
        expect(silent.lines.at(-1)).toEqual({ what: 'To touch food', why: 'nobody’s word stands for hard-oil' });
    });
    it('says nothing of a piece on which nothing hardens', async () => expect((await told('wait 1 d')).lines).toEqual([]));
});
