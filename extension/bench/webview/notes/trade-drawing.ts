import type { TradeView } from '../../../../shared/view/bench-view';

/** Size of the drawing, and what is left free around it, px. */
export const wide = 240;
export const high = 104;
const edge = { left: 14, right: 12, top: 24, bottom: 20 };
/** Radius of the dot of the pass that takes most, and of none, px. */
const [largest, smallest] = [7, 2];

export interface TradeDot {
    readonly x: number;
    readonly y: number;
    /** Its area goes with what one pass takes off. */
    readonly radius: number;
    readonly way: TradeView;
}

/** Where the dots lie: time to the right, what the depth may be off by upwards, both from nought of what is shown. */
export function tradeDots(trade: readonly TradeView[]): TradeDot[] {
    const most = (of: (way: TradeView) => number): number => Math.max(...trade.map(of), 1e-9);
    const [time, off, each] = [most((way) => way.time), most((way) => way.off), most((way) => way.each)];
    return trade.map((way) => ({
        x: edge.left + (way.time / time) * (wide - edge.left - edge.right),
        y: high - edge.bottom - (way.off / off) * (high - edge.top - edge.bottom),
        radius: smallest + (largest - smallest) * Math.sqrt(way.each / each),
        way,
    }));
}

/** All of it for who does not see the drawing. */
export function tradeSentence(trade: readonly TradeView[]): string {
    return trade.map(({ words, chosen }) => `${words}${chosen ? ' (as planned)' : ''}`).join('; ');
}
