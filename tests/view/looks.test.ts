import { describe, expect, it } from 'vitest';
import { contrast } from '../../shared/bench/contrast';
import { Memo } from '../../shared/plan/memo';
import type { Plan } from '../../shared/plan/plan';
import { makeBenchView } from '../../shared/view/make-bench-view';
import { makeRoundView } from '../../shared/view/make-round-view';
import { planOf } from '../kit/plan-of';
import { fillRecipe } from '../kit/shop';

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
