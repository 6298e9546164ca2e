const day = 86_400;
/** Nine in the invented shop's morning, in seconds of a UTC day; ten in summer. */
const morning = 15 * 3_600;

/** The server's time as a test sets it: the real one, moved by seconds. */
export class MovedClock {
  seconds = 0;

  /** A clock that begins in a morning, for a story of some hours that must not run into the shop's next day. */
  static inTheMorning(): MovedClock {
    const clock = new MovedClock();
    clock.seconds = (day + morning - (Math.floor(Date.now() / 1000) % day)) % day;
    return clock;
  }

  now(): Date {
    return new Date(Date.now() + this.seconds * 1000);
  }
}
