import type { Mark, Piece } from '../../plan/piece';
import type { Plan } from '../../plan/plan';

/** A blank as it is just before a step. */
export function pieceBefore(plan: Plan, step: number, blank: string | undefined): Piece | undefined {
    return plan.frames[step]?.find((piece) => piece.blank === blank);
}

/** A blank as it is when all the work is done. */
export function pieceAtEnd(plan: Plan, blank: string): Piece | undefined {
    return plan.frames[plan.frames.length - 1]?.find((piece) => piece.blank === blank);
}

/** What a step made on a piece. */
export function markOf(piece: Piece | undefined, step: number): Mark | undefined {
    return piece?.marks.find((mark) => mark.step === step && mark.registration !== true);
}
