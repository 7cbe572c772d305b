// Los ejercicios y lo que se dice de ellos.
import type { Words } from "./words";

export const exercises: Words["exercises"] = {
  title: "Ejercicios",
  lead: "Cada uno empieza con un pozo de ejemplo que alguien descompuso. La respuesta se comprueba por simulación.",
  start: "Empezar",
  hint: "Una pista",
  check: "Comprobar mi respuesta",
  checking: "Simulando",
  right: "Correcto.",
  notYet: "Todavía no.",
  cause: "¿Cuál es la causa?",
  toSettings: "A los ajustes",
  toWell: "Al pozo",
  leave: "Dejar el ejercicio",
  failsIn: "Todavía falla en",
  ofDraws: "de los pozos probados",
  happens: "Con esta causa el variador hace",
  story: "El dueño dice",
  list: {
    sleep: {
      title: "Haga que este pozo duerma",
      story: "La bomba no para nunca. Todas las llaves están cerradas y aun así gira toda la noche.",
      task: "Encuentre el ajuste que no la deja dormir y cámbielo hasta que duerma en todos los pozos probados, también con una fuga pequeña.",
      hint: "Mire la velocidad con todas las llaves cerradas. ¿Debajo de qué velocidad tendría que quedar para que la suelten?",
    },
    trough: {
      title: "Se para mientras se llena el bebedero",
      story: "«Llenar el bebedero de los caballos toma cuarenta minutos. A la mitad la bomba se para y dice que corrió demasiado.»",
      task: "Encuentre un límite que deje llenar el bebedero y que aun así corte un tubo roto antes de inundar el sótano.",
      hint: "Mire la guarda de marcha larga: su razón nombra el uso más largo. Un límite mucho mayor alimenta una rotura.",
    },
    night: {
      title: "Averigüe por qué para de noche",
      story: "«De día todo va bien. De noche, cuando el riego lleva un cuarto de hora, se para y dice que la línea está cerrada. Ninguna válvula está cerrada. Al rato lo intenta otra vez.»",
      task: "Pruebe las causas en el pozo y elija la que hace lo que dice el dueño.",
      hint: "Abra las dos zonas, deje correr el tiempo y mire el nivel del agua y el punto en el mapa: una bomba que aspira algo de aire toma tanta corriente como una contra una línea cerrada.",
    },
    shut: {
      title: "Cierre la válvula sin daño",
      story: "Un ayudante cerró la válvula en la boca del pozo y la olvidó. La bomba giró contra ella hasta calentarse.",
      task: "Ajuste el variador para que pare solo poco después de cerrarse la línea, y nunca en el uso normal.",
      hint: "Deje correr la casa, cierre la válvula en el pozo y mire adónde va el punto en el mapa.",
    },
  },
  nightCauses: {
    yield: "El pozo da muy poco para un consumo tan largo",
    check: "La válvula de retención fuga",
    tank: "El tanque perdió su carga",
    volts: "La tensión baja de noche",
  },
};
