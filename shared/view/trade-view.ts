import type { TradePoint } from '../plan/plan-trade';
import { showLength, showNumber, showTime } from '../quantity/show';
import type { StepView } from './bench-view';

/** Ways to a depth, as the bench view shows them. */
export function tradeView(points: readonly TradePoint[] | undefined): Pick<StepView, 'trade'> {
    if (points === undefined) return {};
    return {
        trade: points.map((point) => {
            const { passes, time, depth, each, chosen } = point;
            return { passes, time, off: depth.high - depth.value, each, chosen, words: wordsOf(point) };
        }),
    };
}

function wordsOf({ passes, time, depth, each, dose, measured }: TradePoint): string {
    const dosed = `${showNumber(dose, 2)} J/mm² a pass${measured ? '' : ', beyond the squares'}`;
    const count = passes === 1 ? '1 pass' : `${passes} passes`;
    return `${count}: ${showTime(time)}, ± ${showLength(depth.high - depth.value)}, ${showLength(each)} and ${dosed}`;
}
