const day = 86_400;
/** Nobody plans further ahead. */
const maxDays = 20_000;

/** When hands can work, in s from the morning on which the work begins. A work that is longer than the day only has to begin in the morning. */
export class WorkHours {
    /** Of each open day, s; a whole day where work goes on day and night. */
    readonly length: number;
    private readonly isClosed: (day: number) => boolean;

    /**
     * @param workday hours from the start of each day, s; absent: day and night
     * @param isClosed whether nobody works on a day, counted from 0; a week that is closed altogether counts as open
     */
    constructor(workday?: number, isClosed: (day: number) => boolean = () => false) {
        this.length = workday !== undefined && workday > 0 && workday < day ? workday : day;
        const isEverOpen = Array.from({ length: 7 }, (_, index) => !isClosed(index)).includes(true);
        this.isClosed = isEverOpen ? isClosed : () => false;
    }

    isOpen(time: number): boolean {
        return time % day < this.length && !this.isClosed(Math.floor(time / day));
    }

    /** The soonest moment from this one on at which hands can work. */
    from(time: number): number {
        return this.isOpen(time) ? time : this.nextMorning(time);
    }

    /** The next morning on which the shop is open, later than this moment. */
    nextMorning(time: number): number {
        let next = Math.floor(time / day) + 1;
        while (this.isClosed(next)) next++;
        return next * day;
    }

    /** Whether a work of this length (s) can begin now. */
    fits(time: number, length: number): boolean {
        if (!this.isOpen(time)) return false;
        const hour = time % day;
        return this.length === day || hour + length <= this.length || hour === 0;
    }

    /** When a work of this length can begin at the soonest. */
    earliest(time: number, length: number): number {
        const open = this.from(time);
        return this.fits(open, length) ? open : this.nextMorning(open);
    }

    /** Open hours until a moment, s. */
    open(until: number): number {
        let sum = 0;
        for (let morning = 0; morning * day < until && morning < maxDays; morning++) {
            if (!this.isClosed(morning)) sum += Math.min(this.length, until - morning * day);
        }
        return sum;
    }

    /**
     * When so much work can be over at the soonest, whatever its parts are and in whatever order they are done.
     *
     * @param longest the longest part (s), which may run on into the evening
     */
    over(from: number, work: number, longest: number): number {
        const room = Math.max(this.length, longest);
        // By day and night, what was begun goes on into a day that is closed.
        if (room >= day) return from + work;
        let time = from;
        let left = work;
        for (let days = 0; left > 0 && days < maxDays; days++) {
            const today = this.isClosed(Math.floor(time / day)) ? 0 : Math.max(0, room - (time % day));
            if (left <= today) return time + left;
            left -= today;
            time = (Math.floor(time / day) + 1) * day;
        }
        return time + left;
    }
}
