import { useEffect, useState } from 'preact/hooks';

/** The time, ms since 1970, told again each second until `end`; a wait longer than that is not on its way. */
export function useClock(end: number): number {
    const [now, setNow] = useState(Date.now);
    const isRunning = end > now;
    useEffect(() => {
        if (!isRunning) return;
        const timer = setInterval(() => setNow(Date.now()), 1000);
        return () => clearInterval(timer);
    }, [isRunning]);
    return now;
}
