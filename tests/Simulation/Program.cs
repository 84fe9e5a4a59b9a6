Console.Error.WriteLine("The simulation is not there yet.");
return 2;
