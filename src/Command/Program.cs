Console.Error.WriteLine("The command line is not there yet.");
return 2;
