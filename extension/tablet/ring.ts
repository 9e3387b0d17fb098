/** Two tones, three times. A browser lets a page sound only after it has been touched, so that each tick makes it ready. */
let sound: AudioContext | undefined;

const TIMES = 3;
const GAP = 0.6; // s
const LENGTH = 0.25; // s
const TONES = [880, 660]; // Hz

export const ring = {
    ready(): void {
        try {
            sound ??= new AudioContext();
            void sound.resume();
        } catch {
            // A browser without sound: the wait is seen to be over all the same.
        }
    },
    now(): void {
        navigator.vibrate?.([400, 200, 400]);
        if (sound === undefined) return;
        for (let time = 0; time < TIMES; time++)
            for (const [index, tone] of TONES.entries()) beep(sound, sound.currentTime + time * GAP + index * LENGTH, tone);
    },
};

function beep(context: AudioContext, from: number, tone: number): void {
    const source = context.createOscillator();
    const loudness = context.createGain();
    source.frequency.value = tone;
    loudness.gain.setValueAtTime(0.2, from);
    loudness.gain.exponentialRampToValueAtTime(0.001, from + LENGTH);
    source.connect(loudness).connect(context.destination);
    source.start(from);
    source.stop(from + LENGTH);
}
