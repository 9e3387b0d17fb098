import type { TradePoint } from '../plan/plan-trade';
import { showLength, showNumber, showRatio, showSpeed, showTime } from '../quantity/show';
import type { StepView } from './bench-view';

/** Ways to a depth, as the bench view shows them. */
export function tradeView(points: readonly TradePoint[] | undefined): Pick<StepView, 'trade'> {
    if (points === undefined) return {};
    return {
        trade: points.map((point) => {
            const { passes, time, depth, each, chosen } = point;
            return {
                passes,
                time,
                off: depth.high - depth.value,
                each,
                chosen,
                ...(point.sooner && { sooner: point.sooner }),
                words: wordsOf(point),
            };
        }),
    };
}

function wordsOf({ passes, time, depth, each, dose, measured, sooner, speed, powerRatio }: TradePoint): string {
    const dosed = `${showNumber(dose, 2)} J/mm² a pass${measured ? '' : ', beyond the squares'}`;
    const count = passes === 1 ? '1 pass' : `${passes} passes`;
    const at = sooner === true ? ` at ${showSpeed(speed)} and ${showRatio(powerRatio)}, where the head turns sooner` : '';
    return `${count}${at}: ${showTime(time)}, ± ${showLength(depth.high - depth.value)}, ${showLength(each)} and ${dosed}`;
}
