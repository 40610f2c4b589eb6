/** For what decides whether a car may be driven on the road. */
export const roadLegal =
  'A planning figure. Tyre load and speed, and what is road-legal, are for the makers of car and tyre, local rules and a qualified inspector.';
