/** The server's time as a test sets it: the real one, moved by seconds. */
export class MovedClock {
  seconds = 0;
  now(): Date {
    return new Date(Date.now() + this.seconds * 1000);
  }
}
