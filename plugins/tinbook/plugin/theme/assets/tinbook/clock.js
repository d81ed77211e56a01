// Spells times: of the day, and those that are left.
export function timeOfDay(moment) {
  const day = new Date(moment);
  return `${day.getHours()}:${String(day.getMinutes()).padStart(2, "0")}`;
}

export function clock(seconds) {
  const left = Math.max(0, Math.ceil(seconds));
  const hours = Math.floor(left / 3600);
  const minutes = Math.floor((left % 3600) / 60);
  const twoDigits = value => String(value).padStart(2, "0");
  const tail = twoDigits(left % 60);
  return hours ? `${hours}:${twoDigits(minutes)}:${tail}` : `${minutes}:${tail}`;
}
