import { describe, expect, it } from 'vitest';
import { contrast } from '../../shared/bench/contrast';
import { Memo } from '../../shared/plan/memo';
import type { Plan } from '../../shared/plan/plan';
import { makeBenchView } from '../../shared/view/make-bench-view';
import { makeRoundView } from '../../shared/view/make-round-view';
import { planOf } from '../kit/plan-of';
import { fillRecipe, shop } from '../kit/shop';

const seenIn = (plan: Plan) => {
    const frame = 1 + plan.steps.findLastIndex(({ fill }) => fill !== undefined);
    const memo = new Memo();
    const blank = plan.steps[frame - 1]!.blank!;
    const { frames } = makeBenchView(plan, [], { uri: 'file:///a.kerf', textVersion: 1, recipes: [] }, memo);
    const flat = frames[frame]!.pieces.find((piece) => piece.blank === blank)!.layers.find(
        ({ kind }) => kind === 'filled' || kind === 'spilled',
    )!;
    const round = makeRoundView(plan, frame, blank, memo);
    if (typeof round === 'string') throw new Error(round);
    return { flat, round: round.looks.find(({ kind }) => kind === 'resin')! };
};

describe('resin in pictures', () => {
    it('has one look, from above and in the round', async () => {
        const { flat, round } = seenIn(await planOf(fillRecipe()));
        expect(flat).toMatchObject({ colour: round.colour, opacity: 1 });
        expect(round.gloss).toBe(1);
    });
    it('is dark over a burnt floor where it is clear', async () => {
        const { flat } = seenIn(await planOf(fillRecipe().replace('colour #1f6f8b', 'colour #e6dcc3 opacity 0 %')));
        expect(contrast(flat.colour, '#e6dcc3')).toBeGreaterThan(40);
    });
});

describe('coats in pictures', () => {
    const coated = `${shop}\ncoat amber { kind shellac dry 1 h }\nrecipe thing "Thing" {\n revision 1 make 1 laser shed\n blank b { of ash-10 size 100 x 80 mm grain along width }\nfinish b with amber { coats 3 }\n}`;

    it('have the wood seen through their colour, flat and in the round', async () => {
        const plan = await planOf(coated);
        const memo = new Memo();
        const wood = plan.blanks[0]!.blank.sheet!.wood!.colour;
        const { frames } = makeBenchView(plan, [], { uri: 'file:///a.kerf', textVersion: 1, recipes: [] }, memo);
        expect(frames[0]!.pieces[0]!.tint).toBeUndefined();
        const tint = frames[1]!.pieces[0]!.tint!;
        const parts = [1, 3, 5].map((at) => Number.parseInt(tint.slice(at, at + 2), 16));
        // Amber takes away most of the blue and least of the red.
        expect(parts[0]!).toBeGreaterThan(parts[1]!);
        expect(parts[1]!).toBeGreaterThan(parts[2]!);
        const round = makeRoundView(plan, 1, 'b', memo);
        if (typeof round === 'string') throw new Error(round);
        const seen = round.looks.find(({ gloss }) => gloss > 0.5)!.colour;
        const through = [1, 3, 5].map((at, i) => Math.round((Number.parseInt(wood.slice(at, at + 2), 16) * parts[i]!) / 255));
        const shown = [1, 3, 5].map((at) => Number.parseInt(seen.slice(at, at + 2), 16));
        for (let i = 0; i < 3; i++) expect(Math.abs(shown[i]! - through[i]!)).toBeLessThanOrEqual(1);
        const bare = makeRoundView(plan, 1, 'b', memo, { hidden: ['coat'] });
        if (typeof bare === 'string') throw new Error(bare);
        expect(bare.looks.some(({ colour }) => colour === wood)).toBe(true);
    });
});
