let context: AudioContext | undefined;

function tone(hertz: number, fromSecond: number, seconds: number) {
  context ??= new AudioContext();
  const voice = context.createOscillator();
  const volume = context.createGain();
  volume.gain.value = 0.12;
  voice.frequency.value = hertz;
  voice.connect(volume).connect(context.destination);
  voice.start(context.currentTime + fromSecond);
  voice.stop(context.currentTime + fromSecond + seconds);
}

/** One short high tone. */
export function taken(): void {
  tone(880, 0, 0.09);
}

/** Two long low tones: not to be taken for the other in a loud room. */
export function refused(): void {
  tone(220, 0, 0.22);
  tone(220, 0.3, 0.22);
}

const stored = 'hubwright.scan-sound';

/** Whether this device sounds at scans. Off until someone turns it on here. */
export function soundIsOn(): boolean {
  try {
    return localStorage.getItem(stored) === 'on';
  } catch {
    return false;
  }
}

export function keepSound(isOn: boolean): void {
  try {
    if (isOn) localStorage.setItem(stored, 'on');
    else localStorage.removeItem(stored);
  } catch {
    // Storage may be forbidden; the choice then lasts as long as the page.
  }
}
