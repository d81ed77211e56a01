// What a technique's page says.
export const told = { handOn: "Hand on", people: "people", forPeople: count => `For ${count} people` };
