export { type Band, type Dips, type Hold, holdOf } from './hold.ts';
export { refuseOtherScale } from './other-scale.ts';
export { type ChartReading, minute, minutesText, requireChart, since, temperatureAt } from './reading.ts';
export { type Steepest, steepest } from './steepest.ts';
