// Las advertencias que llevan cifras del sitio.
import type { Forms } from "./translated";

export const forms: Forms = [
  [
    "Against a shut line the pump reaches {} at the ceiling of {} and {} at {}, more than {} may bear ({}).",
    "Contra una línea cerrada la bomba llega a {} a la velocidad máxima de {} y a {} a {}, más de lo que aguanta lo más débil: {} ({}).",
  ],
  ["Head goes with the square of speed: at {} it is {} times that at {}.", "La carga va con el cuadrado de la velocidad: a {} es {} veces la de {}."],
  ["The relief valve at {} must stay fitted and be tried each year.", "La válvula de alivio de {} debe quedarse puesta y probarse cada año."],
  [
    "It needs a tenth more than that to pass its flow: one that opens at {} or below is better.",
    "Necesita una décima parte más que eso para dejar pasar su caudal: es mejor una que abra a {} o menos.",
  ],
  [
    "A relief valve that opens at {} or below, a tenth under that rating, and passes the pump's whole flow is a must: a setting is no protection where a person may change it or the sensor may fail.",
    "Hace falta una válvula de alivio que abra a {} o menos, una décima parte debajo de lo que aguanta esa pieza, y que deje pasar todo el caudal de la bomba: un ajuste no protege donde alguien puede cambiarlo o el sensor puede fallar.",
  ],
  [
    "With the pressure lost at the ceiling the pump passes up to {} times its best-efficiency flow: beyond about {} its stages lift instead of pressing down.",
    "Con la presión perdida, a la velocidad máxima, la bomba mueve hasta {} veces su caudal de mejor eficiencia: arriba de unas {} sus etapas se levantan en vez de empujar hacia abajo.",
  ],
  [
    "Do not leave it pumping into an open line at full speed; a flow control at the well head limits it.",
    "No la deje bombear a toda velocidad en una línea abierta; un limitador de caudal en la boca del pozo lo evita.",
  ],
  [
    "In a casing of {} a shell of {} needs {} to be washed at 0.25 ft/s (0.076 m/s); the peak draw is {}.",
    "En un ademe de {} una carcasa de {} necesita {} para que el agua la bañe a 0.25 ft/s (0.076 m/s); el consumo máximo es {}.",
  ],
  ["A sleeve around the motor mends it.", "Una camisa alrededor del motor lo remedia."],
  [
    "Under the leak alone the pump starts {} to {} times a day; {} are what such a motor is usually allowed (common practice; a drive's soft start is kinder).",
    "Solo por la fuga la bomba arranca de {} a {} veces al día; {} son las que suelen permitirse a un motor así (práctica común; el arranque suave de un variador lo cuida más).",
  ],
  ["A larger tank or no leak lowers it.", "Un tanque mayor, o ninguna fuga, lo reduce."],
  [
    "The motor's plate contradicts itself: no machine of this kind shows all of its figures, one is missed by {} % or more in every draw.",
    "La placa del motor se contradice: ninguna máquina de esta clase muestra todas sus cifras; en cada sorteo una queda errada por {} % o más.",
  ],
  [
    "The motor's plate contradicts itself: no machine of this kind shows all of its figures, one of those at work is missed by {} % or more in every draw.",
    "La placa del motor se contradice: ninguna máquina de esta clase muestra todas sus cifras; en cada sorteo una de las de trabajo queda errada por {} % o más.",
  ],
  ["Read it again.", "Léala otra vez."],
  ["The tank's precharge is known only as {} to {}.", "De la precarga del tanque solo se sabe que está entre {} y {}."],
  ["Measure it with the line open to the air, and set it to about {}.", "Mídala con la línea abierta al aire y ajústela a unos {}."],
  [
    "Set the tank's precharge to {} with the line open to the air, {} below cut-in; the site file says {} to {}, and the figures here are for that.",
    "Ajuste la precarga del tanque a {} con la línea abierta al aire, {} debajo de la presión de arranque; el archivo del sitio dice de {} a {}, y las cifras de aquí son para eso.",
  ],
  [
    "The drive is rated {}, the motor takes up to {} at its service factor: the drive will hold the speed back under full load.",
    "El variador es de {} y el motor toma hasta {} con su factor de servicio: el variador frenará la velocidad a plena carga.",
  ],
  ["power", "potencia"],
  ["current", "corriente"],
  [
    "In {} of {} draws the pump at {} can draw the well down to its intake and then passes what the well gives, mixed with air.",
    "En {} de {} sorteos la bomba a {} puede bajar el pozo hasta su toma, y entonces mueve lo que el pozo da, mezclado con aire.",
  ],
  [
    "Its {} then lies under the dry-run threshold in {}, between it and the closed-discharge threshold in {} of them: the stop is then called closed discharge.",
    "Su {} queda entonces debajo del umbral de marcha en seco en {}, y entre este y el de descarga cerrada en {} de ellos: el paro se llama entonces descarga cerrada.",
  ],
  [
    "In {} of {} draws an overdrawn well still gives {} to {}, and the {} stays above both thresholds: the household can be held at low pressure for hours without a guard acting.",
    "En {} de {} sorteos un pozo sobreexplotado sigue dando de {} a {}, y la {} queda arriba de los dos umbrales: la casa puede quedar horas con presión baja sin que actúe ninguna guarda.",
  ],
  [
    "What catches it: a level probe on the permissive contact, or watching for pressure below the target at the ceiling for longer than a few minutes.",
    "Lo que lo detecta: una sonda de nivel en el contacto externo, o vigilar que la presión no quede más de unos minutos debajo de la que hay que mantener a velocidad máxima.",
  ],
  ["This pump already holds the target at {}; at its floor of {} it gives more.", "Esta bomba ya sostiene la presión a {}; a su velocidad mínima de {} da más."],
  [
    "It will sleep after overshooting, and a smaller pump end would suit better.",
    "Dormirá después de pasarse, y le iría mejor una bomba más pequeña.",
  ],
  [
    "The peak draw of {} is more than this pump is built for ({}): while it lasts the pressure sags, whatever is set.",
    "El consumo máximo de {} es más de aquello para lo que está hecha esta bomba ({}): mientras dure, la presión baja, se ajuste lo que se ajuste.",
  ],
];
