export { judgeTorque, missingTorque, type PassDone, settingComplaint, type TorqueDone } from './judge-torque.ts';
export { decimalsOf, type Pass, passesOf, placesOf, type TorqueSpec, type TorqueUnit, torqueUnits } from './plan.ts';
export { sayTorque } from './say-torque.ts';
export { type Adapter, settingBand, settingFor, torqueAt } from './wrench.ts';
