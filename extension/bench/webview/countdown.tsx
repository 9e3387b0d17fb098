import { showTime } from '../../../shared/quantity/show';
import { useClock } from './use-clock';

/** How long a wait that was begun goes on, counted down. */
export function Countdown({ ends }: { ends: number }) {
    const left = ends - useClock(ends);
    return left > 0 ? (
        <span class="countdown">{showTime(Math.ceil(left / 1000))} left</span>
    ) : (
        <span class="countdown over">over</span>
    );
}
